import { createServer, type Server } from "node:http";
import { createServer as createSecure, type ServerOptions } from "node:https";
import type { AddressInfo } from "node:net";
import { files, type Guest } from "./files";

export interface Served {
  /** Ends with a slash. */
  readonly address: string;
  readonly port: number;
  close(): Promise<void>;
}

const loopback = "127.0.0.1";
const attempts = 100;

const listening = (server: Server, port: number): Promise<void> =>
  new Promise((resolve, reject) => {
    server.once("error", reject);
    server.listen(port, loopback, () => {
      server.off("error", reject);
      resolve();
    });
  });

const isTaken = (error: unknown): boolean => (error as NodeJS.ErrnoException).code === "EADDRINUSE";

interface Wanted {
  readonly port?: number;
  /** How many ports are tried, each after the one before. */
  readonly tries?: number;
  readonly guest?: Guest;
  /** Key and certificate, where the pages are served over https. */
  readonly secure?: ServerOptions;
}

/** Serves a folder to this machine only. A taken port moves on to the next; port 0 takes any free one. */
export async function serve(folder: string, { port = 3000, tries = attempts, guest, secure }: Wanted = {}): Promise<Served> {
  const server = secure ? createSecure(secure, files(folder, guest)) : createServer(files(folder, guest));
  for (let tried = 1; ; tried++) {
    try {
      await listening(server, port);
      break;
    } catch (error) {
      if (!isTaken(error) || tried === tries || port >= 65535) throw error;
      port++;
    }
  }
  const taken = (server.address() as AddressInfo).port;
  return {
    address: secure ? `https://localhost:${taken}/` : `http://${loopback}:${taken}/`,
    port: taken,
    close: () =>
      new Promise((resolve) => {
        server.close(() => resolve());
        server.closeAllConnections();
      }),
  };
}

import { createServer, type Server } from "node:http";
import type { AddressInfo } from "node:net";
import { files } from "./files";

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

/** Serves a folder to this machine only. A taken port moves on to the next; port 0 takes any free one. */
export async function serve(folder: string, { port = 3000 }: { port?: number } = {}): Promise<Served> {
  const server = createServer(files(folder));
  for (let tried = 1; ; tried++) {
    try {
      await listening(server, port);
      break;
    } catch (error) {
      if (!isTaken(error) || tried === attempts || port >= 65535) throw error;
      port++;
    }
  }
  const taken = (server.address() as AddressInfo).port;
  return {
    address: `http://${loopback}:${taken}/`,
    port: taken,
    close: () =>
      new Promise((resolve) => {
        server.close(() => resolve());
        server.closeAllConnections();
      }),
  };
}

import { createServer, type Server } from "node:http";
import type { AddressInfo } from "node:net";
import sirv from "sirv";

export interface Served {
  /** Ends with a slash. */
  readonly address: string;
  readonly port: number;
  close(): Promise<void>;
}

const loopback = "127.0.0.1";
const attempts = 100;

/** Text that a browser would otherwise read in a character set of its own choice; the server adds one to HTML itself. */
const texts: Readonly<Record<string, string>> = {
  js: "text/javascript",
  css: "text/css",
  json: "application/json",
  xml: "text/xml",
  svg: "image/svg+xml",
  txt: "text/plain",
  md: "text/markdown",
};

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
  const files = sirv(folder, {
    dev: true,
    setHeaders: (response, path) => {
      const type = texts[path.slice(path.lastIndexOf(".") + 1)];
      if (type) response.setHeader("Content-Type", `${type};charset=utf-8`);
      response.setHeader("Cache-Control", "no-store");
      response.setHeader("X-Content-Type-Options", "nosniff");
    },
  });
  const server = createServer((request, response) => files(request, response));
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

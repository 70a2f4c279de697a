import { createReadStream, realpathSync, type Stats, statSync } from "node:fs";
import type { IncomingMessage, RequestListener, ServerResponse } from "node:http";
import { join, sep } from "node:path";
import { pipeline } from "node:stream";
import { lookup } from "mrmime";

/** Names under which a browser on this machine reaches it: any other is a page elsewhere that had its own name point here. */
const here = new Set(["127.0.0.1", "localhost", "[::1]"]);

const isHere = (host: string | undefined): boolean => host !== undefined && here.has(host.replace(/:\d+$/, "").toLowerCase());

interface Found {
  readonly path: string;
  readonly stats: Stats;
}

/** The file that an address means, or its folder's index; nothing that lies outside the folder, a link that leads there included. */
function found(folder: string, address: string): Found | undefined {
  try {
    const name = decodeURIComponent(address.replace(/[?#].*$/s, ""));
    const path = realpathSync(join(folder, name));
    if (path !== folder && !path.startsWith(folder + sep)) return undefined;
    const stats = statSync(path);
    if (stats.isFile()) return { path, stats };
    return stats.isDirectory() && name.endsWith("/") ? found(folder, `${encodeURI(name)}index.html`) : undefined;
  } catch {
    return undefined;
  }
}

/** Without a character set a browser takes text in one of its own choice. */
function typeOf(path: string): string {
  const type = lookup(path) ?? "application/octet-stream";
  return /^text|json$|xml$|javascript$/.test(type) ? `${type};charset=utf-8` : type;
}

function refuse(response: ServerResponse, status: number, words: string, more: Readonly<Record<string, string>> = {}): void {
  response.writeHead(status, { "Content-Type": "text/plain;charset=utf-8", ...more });
  response.end(words);
}

/** Who may frame and fetch what is handed out, beside the pages themselves. */
export type Guest = "nobody" | "Excel";

/**
 * Excel on the web frames the pane and fetches the functions from an origin of its own; a browser first asks whether a page on
 * the network may reach this machine.
 */
const welcome: Readonly<Record<Guest, Readonly<Record<string, string>>>> = {
  nobody: { "Content-Security-Policy": "frame-ancestors 'self'" },
  Excel: { "Access-Control-Allow-Origin": "*", "Access-Control-Allow-Private-Network": "true" },
};

function answer(folder: string, guest: Guest, { method, url = "/", headers }: IncomingMessage, response: ServerResponse): void {
  response.setHeader("Cache-Control", "no-store");
  response.setHeader("X-Content-Type-Options", "nosniff");
  for (const [name, value] of Object.entries(welcome[guest])) response.setHeader(name, value);
  // Excel wants icons that it may keep.
  if (guest === "Excel" && url.startsWith("/icons/")) response.setHeader("Cache-Control", "max-age=60");
  const file = found(folder, url);
  if (!isHere(headers.host)) refuse(response, 421, "This server answers this machine only.");
  else if (method === "OPTIONS" && guest === "Excel") response.writeHead(204, { Allow: "GET, HEAD, OPTIONS" }).end();
  else if (method !== "GET" && method !== "HEAD")
    refuse(response, 405, "This server hands out files, and takes none.", { Allow: "GET, HEAD" });
  else if (file) handOut(file, method, response);
  else refuse(response, 404, "There is no such file.");
}

function handOut(file: Found, method: string, response: ServerResponse): void {
  response.writeHead(200, { "Content-Type": typeOf(file.path), "Content-Length": file.stats.size });
  if (method === "HEAD" || !file.stats.size) response.end();
  // A file that changes or goes away while it is read ends its own answer and nothing else.
  else pipeline(createReadStream(file.path, { end: file.stats.size - 1 }), response, () => {});
}

/** Hands out the files of a folder, whole: a part of one (Range) is never due here. */
export function files(folder: string, guest: Guest = "nobody"): RequestListener {
  const root = realpathSync(folder);
  return (request, response) => answer(root, guest, request, response);
}

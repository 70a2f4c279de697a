import { X509Certificate } from "node:crypto";
import { existsSync, mkdirSync, readFileSync, rmSync } from "node:fs";
import { join } from "node:path";
import { generateCertificates, getHttpsServerOptions } from "office-addin-dev-certs";

/** A certificate for https://localhost. */
export interface Certificate {
  readonly key: Buffer | string;
  readonly cert: Buffer | string;
  readonly ca: Buffer | string;
  /** Where its authority lies, if nobody has told this machine to trust it. */
  readonly untrusted?: string;
}

const days = 30;

const isGood = (path: string): boolean =>
  existsSync(path) && new Date(new X509Certificate(readFileSync(path)).validTo).getTime() > Date.now();

/** One that only a browser has to trust, kept in a folder. */
export async function madeIn(folder: string): Promise<Certificate> {
  const [ca, cert, key] = ["ca.crt", "localhost.crt", "localhost.key"].map((name) => join(folder, name));
  if (!isGood(cert)) {
    rmSync(folder, { recursive: true, force: true });
    mkdirSync(folder, { recursive: true });
    await generateCertificates(ca, cert, key, days, ["localhost", "127.0.0.1"]);
  }
  return { ca: readFileSync(ca), cert: readFileSync(cert), key: readFileSync(key), untrusted: ca };
}

/** Where Excel runs, one that the whole machine trusts: the system asks before it does. Elsewhere nothing of the machine is changed. */
export const certificate = (folder: string): Promise<Certificate> =>
  process.platform === "win32" || process.platform === "darwin" ? getHttpsServerOptions(days) : madeIn(folder);

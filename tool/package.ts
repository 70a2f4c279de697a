import { randomUUID } from "node:crypto";
import { cpSync, existsSync, mkdtempSync, readdirSync, readFileSync, rmSync, statSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join, relative, resolve } from "node:path";
import { parseArgs } from "node:util";
import { version } from "../package.json";
import { build } from "./build";
import { headersFile, headersOf } from "./headers";
import { manifestTroubles } from "./inspection";
import { type Edition, hostAddress, hostedManifest } from "./manifest";

/** `npm run package`: a folder to copy to a static host, and in it the manifest that tells Excel where it lies. */

const root = join(__dirname, "..");
const usage = 'npm run package -- --host https://club.example/porewise [--name "Our club"] [--id GUID] [-o folder]';

export interface Order extends Edition {
  readonly folder: string;
}

const options = {
  host: { type: "string" },
  name: { type: "string" },
  id: { type: "string" },
  output: { type: "string", short: "o", default: "hosted" },
} as const;

function parsed(args: readonly string[]) {
  try {
    return parseArgs({ args: [...args], options }).values;
  } catch (error) {
    throw new Error(`${(error as Error).message}\n${usage}`);
  }
}

function guid(typed: string): string {
  if (/^[\da-f]{8}(-[\da-f]{4}){3}-[\da-f]{12}$/i.test(typed)) return typed.toLowerCase();
  throw new Error(`--id ${typed}: an Id is 32 digits and letters a to f, as in ${randomUUID()}; leave it out to get a fresh one`);
}

function label(typed: string): string {
  if (typed.trim() && !/\p{Cc}/u.test(typed)) return typed.trim();
  throw new Error("--name takes the words that Excel shows on the ribbon");
}

/** What was asked for on the command line. */
export function orderOf(args: readonly string[]): Order {
  const { host, name, id, output } = parsed(args);
  if (!host) throw new Error(`--host is missing: the address that the folder will have\n${usage}`);
  if (!output) throw new Error("-o takes the name of a folder");
  return {
    host: hostAddress(host),
    id: id === undefined ? randomUUID() : guid(id),
    version,
    ...(name === undefined ? {} : { name: label(name) }),
    folder: resolve(output),
  };
}

/** Puts the manifest beside the files of a build, and refuses what Excel would. */
export function complete(built: string, order: Edition): void {
  const xml = hostedManifest(readFileSync(join(root, "manifest.xml"), "utf8"), order);
  const read = (path: string) => (existsSync(join(built, path)) ? readFileSync(join(built, path)) : undefined);
  const troubles = manifestTroubles(xml, order.host, read);
  if (troubles.length) throw new Error(`Excel would refuse this package:\n${troubles.join("\n")}`);
  writeFileSync(join(built, "manifest.xml"), xml);
  writeFileSync(join(built, headersFile), headersOf(order.host));
  cpSync(join(root, "LICENSE"), join(built, "LICENSE"));
}

/** Nothing of somebody else's is overwritten: a folder is new, empty, or an earlier package. */
function refuseTaken(folder: string): void {
  if (!existsSync(folder)) return;
  if (!statSync(folder).isDirectory()) throw new Error(`${folder} is a file: name a folder`);
  const names = readdirSync(folder);
  const earlier = ["manifest.xml", "functions.json"].every((name) => names.includes(name));
  if (names.length && !earlier) throw new Error(`${folder} holds other files: name a new folder`);
}

/** Built aside and copied when all is sound, so that a failure leaves the folder as it was. */
export async function pack(order: Order, fill: (folder: string, host: string) => Promise<void> = build): Promise<void> {
  refuseTaken(order.folder);
  const aside = mkdtempSync(join(tmpdir(), "porewise-package-"));
  try {
    await fill(aside, order.host);
    complete(aside, order);
    cpSync(aside, order.folder, { recursive: true });
  } finally {
    rmSync(aside, { recursive: true, force: true });
  }
}

async function main(): Promise<void> {
  const order = orderOf(process.argv.slice(2));
  await pack(order);
  const near = relative(process.cwd(), order.folder);
  const shown = near && !near.startsWith("..") ? near : order.folder;
  console.log(`Copy what is in ${shown} to ${order.host}, then give Excel ${join(shown, "manifest.xml")}: docs/hosting.md says how.`);
  console.log(`Its Id is ${order.id}. The next version needs the same one: --id ${order.id}`);
}

if (require.main === module)
  main().catch((error: unknown) => {
    console.error(error instanceof Error ? error.message : error);
    process.exitCode = 1;
  });

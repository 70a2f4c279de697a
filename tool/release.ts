import { createHash } from "node:crypto";
import { cpSync, mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, statSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join, relative, sep } from "node:path";
import { parseArgs } from "node:util";
import { zipSync } from "fflate";
import { version } from "../package.json";
import { folder as workbookFolder } from "../src/workbook/choice";
import { writeMetadata } from "./build";
import { dist, freshen } from "./fresh";
import { development, elements, hostAddress, parse } from "./manifest";
import { oneFile } from "./onefile";
import { complete } from "./package";

/** `npm run release`: everything that a version hands out, and the same bytes whenever it is made. */

const root = join(__dirname, "..");
export const releaseFolder = join(root, "release");
const sums = "SHA256SUMS";

/** A zip file holds times: these are the same everywhere. */
const moment = new Date(2000, 0, 1);

function filesIn(folder: string): string[] {
  return readdirSync(folder)
    .sort()
    .flatMap((name) => {
      const path = join(folder, name);
      return statSync(path).isDirectory() ? filesIn(path) : [path];
    });
}

export function zipped(folder: string): Uint8Array {
  const entries = filesIn(folder).map((path) => [relative(folder, path).split(sep).join("/"), readFileSync(path)] as const);
  return zipSync(Object.fromEntries(entries), { level: 9, mtime: moment });
}

const ownId = (): string => elements(parse(readFileSync(join(root, "manifest.xml"), "utf8")), "Id")[0].textContent!;

/** The add-in and the page for a host, with the manifest that names it. */
async function site(built: string, host: string, id: string): Promise<Uint8Array> {
  const aside = mkdtempSync(join(tmpdir(), "porewise-release-"));
  try {
    cpSync(built, aside, { recursive: true });
    await writeMetadata(aside, host);
    complete(aside, { host, id, version });
    return zipped(aside);
  } finally {
    rmSync(aside, { recursive: true, force: true });
  }
}

/** Writes a release of a build into a folder; answers the names of its files. */
export async function release(built: string, folder: string, host = development, id = ownId()): Promise<string[]> {
  rmSync(folder, { recursive: true, force: true });
  mkdirSync(folder, { recursive: true });
  writeFileSync(join(folder, `porewise-${version}-site.zip`), await site(built, host, id));
  writeFileSync(join(folder, "porewise.html"), await oneFile(built));
  for (const name of readdirSync(join(built, workbookFolder))) cpSync(join(built, workbookFolder, name), join(folder, name));
  cpSync(join(built, "NOTICES.txt"), join(folder, "NOTICES.txt"));
  for (const name of ["LICENSE", "CHANGELOG.md"]) cpSync(join(root, name), join(folder, name));
  const names = readdirSync(folder).sort();
  const lines = names.map(
    (name) =>
      `${createHash("sha256")
        .update(readFileSync(join(folder, name)))
        .digest("hex")}  ${name}`,
  );
  writeFileSync(join(folder, sums), `${lines.join("\n")}\n`);
  return [...names, sums];
}

async function main(): Promise<void> {
  const { values } = parseArgs({ options: { host: { type: "string" }, id: { type: "string" } } });
  const host = values.host === undefined ? development : hostAddress(values.host);
  await freshen();
  const names = await release(dist, releaseFolder, host, values.id);
  console.log(`release/ holds Porewise ${version}:\n${names.map((name) => `  ${name}`).join("\n")}`);
  if (host === development) console.log("The zip is for this machine. For a host: npm run release -- --host https://club.example/porewise");
}

if (require.main === module)
  main().catch((error: unknown) => {
    console.error(error instanceof Error ? error.message : error);
    process.exit(1);
  });

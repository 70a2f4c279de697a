import { cpSync, mkdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { catalogue } from "../src/catalogue";
import { folder } from "../src/workbook/choice";
import { bundled, bundles } from "./bundle";
import { buildHelp } from "./help";
import { development } from "./manifest";
import { metadata } from "./metadata";
import { notices } from "./notices";
import { buildPage } from "./page";
import { buildProtocol } from "./protocol";
import { shippedPackages } from "./shipped";
import { buildWorkbooks, fileName } from "./workbook";

const root = join(__dirname, "..");

const paneFiles = ["taskpane.html", "taskpane.css"];
const iconSizes = [16, 32, 64, 80];

/** The one file that names its host: the address Excel will find everything under. */
export async function writeMetadata(outDir: string, host: string): Promise<void> {
  writeFileSync(join(outDir, "functions.json"), `${JSON.stringify(await metadata(catalogue, host), null, 2)}\n`);
}

/** Writes everything that a static host serves. */
export async function build(outDir: string, host: string = development): Promise<void> {
  rmSync(outDir, { recursive: true, force: true });
  mkdirSync(join(outDir, "icons"), { recursive: true });
  for (const name of bundles) for (const [file, bytes] of await bundled(name)) writeFileSync(join(outDir, file), bytes);
  await writeMetadata(outDir, host);
  for (const file of paneFiles) cpSync(join(root, "taskpane", file), join(outDir, file));
  for (const size of iconSizes) cpSync(join(root, `assets/mark-${size}.png`), join(outDir, `icons/mark-${size}.png`));
  buildProtocol(outDir);
  await buildHelp(outDir);
  await buildWorkbooks(join(outDir, folder));
  await buildPage(outDir, readFileSync(join(outDir, folder, fileName("live", "US", "demo"))));
  writeFileSync(join(outDir, "NOTICES.txt"), notices(shippedPackages()));
}

import { cpSync, mkdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { catalogue } from "../src/catalogue";
import { folder } from "../src/workbook/choice";
import { bundled, bundles } from "./bundle";
import { development } from "./manifest";
import { metadata } from "./metadata";
import { notices } from "./notices";
import { buildPage } from "./page";
import { buildWorkbooks, fileName } from "./workbook";

const root = join(__dirname, "..");
export const dist = join(root, "dist");

const paneFiles = ["taskpane.html", "taskpane.css"];
const iconSizes = [16, 32, 64, 80];

/** Writes everything that a static host serves; `host` is the address Excel will find it under. */
export async function build(outDir: string, host: string = development): Promise<void> {
  rmSync(outDir, { recursive: true, force: true });
  mkdirSync(join(outDir, "icons"), { recursive: true });
  for (const name of bundles) for (const [file, bytes] of await bundled(name)) writeFileSync(join(outDir, file), bytes);
  writeFileSync(join(outDir, "functions.json"), `${JSON.stringify(await metadata(catalogue, host), null, 2)}\n`);
  for (const file of paneFiles) cpSync(join(root, "taskpane", file), join(outDir, file));
  for (const size of iconSizes) cpSync(join(root, `assets/mark-${size}.png`), join(outDir, `icons/mark-${size}.png`));
  writeFileSync(join(outDir, "NOTICES.txt"), notices());
  await buildWorkbooks(join(outDir, folder));
  await buildPage(outDir, readFileSync(join(outDir, folder, fileName("live", "US", "demo"))));
}

if (require.main === module) build(dist).then(() => console.log("dist/ holds the add-in and the page."));

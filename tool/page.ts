import { cpSync, existsSync, mkdirSync, readFileSync, writeFileSync } from "node:fs";
import { dirname, join } from "node:path";
import { build } from "esbuild";
import { firstFile } from "../sheet/page/first";
import { contentOf, firstBook } from "./first";
import { buildOffline } from "./offline";
import { noteFile, noting } from "./shipped";

const root = join(__dirname, "..");

/** Files of the packages that the page loads as they are, by their place beside the page. */
const vendor: Readonly<Record<string, string>> = {
  "owl.iife.min.js": "@odoo/owl/dist/owl.iife.min.js",
  "owl-LICENSE": "@odoo/owl/LICENSE",
  "o_spreadsheet.min.iife.js": "@odoo/o-spreadsheet/dist/o_spreadsheet.min.iife.js",
  "o_spreadsheet.xml": "@odoo/o-spreadsheet/dist/o_spreadsheet.xml",
  "o_spreadsheet.css": "@odoo/o-spreadsheet/dist/o_spreadsheet.css",
  "o_spreadsheet-LICENSE": "@odoo/o-spreadsheet/LICENSE",
  "chart.umd.min.js": "chart.js/dist/chart.umd.min.js",
  "chart-LICENSE.md": "chart.js/LICENSE.md",
  "bootstrap.min.css": "bootstrap/dist/css/bootstrap.min.css",
  "bootstrap-LICENSE": "bootstrap/LICENSE",
  "font-awesome/css/font-awesome.min.css": "font-awesome/css/font-awesome.min.css",
  "font-awesome/fonts/fontawesome-webfont.woff2": "font-awesome/fonts/fontawesome-webfont.woff2",
  "font-awesome/README.md": "font-awesome/README.md",
};

function copy(from: string, to: string): void {
  mkdirSync(dirname(to), { recursive: true });
  cpSync(from, to);
}

/** The pane as the page frames it: without the scripts that only Excel needs, and without leave to load from elsewhere. */
export const framed = (html: string): string =>
  html
    .replace(/\s*<script src="(https:[^"]*|functions\.js)"><\/script>/g, "")
    .replace(/(content="default-src[^"]*?) https:[^\s;"]+/g, "$1");

/** The page's own scripts, markup and styles, and the frame of the pane: what changes while somebody works on them. */
export async function buildScripts(outDir: string): Promise<void> {
  await build({
    entryPoints: {
      page: join(root, "sheet/page/page.ts"),
      reader: join(root, "sheet/page/reader/reader.ts"),
      halt: join(root, "taskpane/halt.ts"),
    },
    outdir: outDir,
    bundle: true,
    minify: true,
    format: "iife",
    target: "es2022",
    legalComments: "none",
    plugins: [noting],
  });
  for (const file of ["index.html", "page.css"]) copy(join(root, "sheet/page", file), join(outDir, file));
  const pane = join(root, "taskpane/taskpane.html");
  if (existsSync(pane)) writeFileSync(join(outDir, "pane.html"), framed(readFileSync(pane, "utf8")));
}

/** Builds the embedded spreadsheet into a folder, its index.html at the root, to open on a workbook: the template's, if none is given. */
export async function buildPage(outDir: string, book?: Uint8Array): Promise<void> {
  await buildScripts(outDir);
  copy(join(root, "assets/mark.svg"), join(outDir, "icons/mark.svg"));
  for (const [to, from] of Object.entries(vendor)) {
    noteFile(`node_modules/${from}`);
    copy(join(root, "node_modules", from), join(outDir, "vendor", to));
  }
  writeFileSync(join(outDir, firstFile), JSON.stringify(contentOf(book ?? (await firstBook()))));
  await buildOffline(outDir);
}

import { existsSync, readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { compress, init } from "@bokuweb/zstd-wasm";
import { build } from "esbuild";
import { unzipSync } from "fflate";
import type { Packed } from "../sheet/onefile/packed";
import { folder } from "../src/workbook/choice";
import { paneInOne } from "./bundle";
import { notices } from "./notices";

/** The whole page as one file, to open from a disk, a stick or a mail: no host, no network, no installation. */

const root = join(__dirname, "..");

/** What is under the LGPL stays as it came, each a script of its own; the licenses stand before them. */
const packages = ["owl.iife.min.js", "o_spreadsheet.min.iife.js"];

/** All that the page needs lies in it: it may reach nothing. The engine compiles formulas, and pictures and files are made on the spot. */
const policy =
  "default-src 'none'; script-src 'unsafe-inline' 'unsafe-eval' blob:; style-src 'unsafe-inline'; img-src data: blob:; font-src data:; connect-src blob: data:; worker-src blob:; frame-src 'self' blob:; base-uri 'none'; form-action 'none'";

/** Text that would close a script element, or open a comment inside it, must be escaped. */
function script(text: string, name: string, mark = ""): string {
  if (/<\/?script/i.test(text)) throw new Error(`${name} cannot stand inside a page: it speaks of scripts`);
  return `<script${mark}>${text}</script>`;
}

const comment = (text: string): string => `<!--\n${text.replace(/--+/g, (dashes) => "- ".repeat(dashes.length).trim())}\n-->`;

const address = (bytes: Uint8Array, type: string): string => `data:${type};base64,${Buffer.from(bytes).toString("base64")}`;

/** What a page would fetch, by the path it has there; a workbook in its parts. */
async function inside(built: string): Promise<readonly (readonly [path: string, bytes: Uint8Array])[]> {
  const file = (path: string) => readFileSync(join(built, path));
  const text = (path: string) => file(path).toString();
  const [pane] = [...(await paneInOne()).values()];
  const paneHtml = text("pane.html")
    .replace(/\s*<meta http-equiv="Content-Security-Policy"[^>]*>/, "")
    .replace(/\s*<link [^>]*>/g, "")
    .replace(/\s*<script [^>]*><\/script>/g, "")
    .replace("</head>", () => `<style>${text("taskpane.css")}</style><script>porewiseInside = parent.porewiseInside;</script></head>`)
    .replace("</body>", () => `${script(new TextDecoder().decode(pane), "the pane")}</body>`);
  const font = address(file("vendor/font-awesome/fonts/fontawesome-webfont.woff2"), "font/woff2");
  const icons = text("vendor/font-awesome/css/font-awesome.min.css").replace(
    /@font-face\{[^}]*\}/,
    () => `@font-face{font-family:'FontAwesome';src:url(${font}) format("woff2");font-weight:normal;font-style:normal}`,
  );
  const styles = {
    "1.css": text("vendor/bootstrap.min.css"),
    "2.css": icons,
    "3.css": text("vendor/o_spreadsheet.css"),
    "4.css": text("page.css"),
  };
  const books = existsSync(join(built, folder)) ? readdirSync(join(built, folder)).sort() : [];
  const bytes = (words: string) => new TextEncoder().encode(words);
  const parts = books.flatMap((name) =>
    Object.entries(unzipSync(file(`${folder}/${name}`))).map(([part, content]) => [`${folder}/${name}/${part}`, content] as const),
  );
  return [
    ...Object.entries(styles).map(([name, words]) => [name, bytes(words)] as const),
    // In the order in which they run.
    ["1.js", file("vendor/chart.umd.min.js")],
    ["2.js", file("page.js")],
    ["reader.js", file("reader.js")],
    ["pane.html", bytes(paneHtml)],
    ["first.json", file("first.json")],
    ["vendor/o_spreadsheet.xml", file("vendor/o_spreadsheet.xml")],
    ...parts,
  ];
}

/** A compression window over everything finds what eight workbooks and three scripts have in common. */
const level = 12;

async function packed(built: string): Promise<string> {
  const files = await inside(built);
  const list: Packed = files.map(([path, { length }]) => [path, length]);
  await init();
  const bytes = Buffer.from(compress(Buffer.concat(files.map(([, content]) => content)), level)).toString("base64");
  return `<script type="application/json" id="packed">${JSON.stringify(list)}</script>\n<script type="text/plain" id="inside">${bytes}</script>`;
}

async function opener(): Promise<string> {
  const { outputFiles } = await build({
    entryPoints: [join(root, "sheet/onefile/inside.ts")],
    bundle: true,
    minify: true,
    format: "iife",
    target: "es2022",
    legalComments: "none",
    write: false,
  });
  return outputFiles[0].text;
}

/** The page of a build, in one file. */
export async function oneFile(built: string): Promise<string> {
  const text = (path: string) => readFileSync(join(built, path), "utf8");
  const pack = await packed(built);
  const mark = address(readFileSync(join(built, "icons/mark.svg")), "image/svg+xml");
  const first = script(await opener(), "the first script");
  const scripts = packages.map(
    (name) => `${comment(`${name}, unmodified: its license is above`)}\n${script(text(`vendor/${name}`), name, " data-package")}`,
  );
  return (
    text("index.html")
      .replace(
        /<meta\s+http-equiv="Content-Security-Policy"[^>]*>/,
        () => `<meta http-equiv="Content-Security-Policy" content="${policy}" />`,
      )
      .replace(/\s*<link [^>]*>/g, "")
      .replace(/\s*<script [^>]*><\/script>/g, "")
      // Help is a folder of pages, which one file does not bring along.
      .replace(/\s*<a class="care-help"[^>]*>[^<]*<\/a>/, "")
      .replaceAll("icons/mark.svg", mark)
      .replace("</head>", () => `<link rel="icon" href="${mark}" />\n${pack}\n${first}\n</head>`)
      .replace(
        "</body>",
        () =>
          `${comment(`Porewise brings along the work of others, under these licenses:\n\n${text("NOTICES.txt")}\n${notices(["fzstd"])}`)}\n${scripts.join("\n")}\n</body>`,
      )
  );
}

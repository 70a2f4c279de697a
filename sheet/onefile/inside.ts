import { zipSync } from "fflate";
import { decompress } from "fzstd";
import "../../taskpane/inside";
import { type Packed, workbookEnd } from "./packed";

// The first script of a page that is one file. Before it stands all that a host would hand out, packed, as text.
const bytesOf = (id: string): Uint8Array => {
  const element = document.getElementById(id)!;
  const bytes = Uint8Array.from(atob(element.textContent!.trim()), (letter) => letter.charCodeAt(0));
  element.remove();
  return bytes;
};

const list = JSON.parse(document.getElementById("packed")!.textContent!) as Packed;
const all = decompress(bytesOf("inside"));
const files = new Map<string, Uint8Array<ArrayBuffer>>();
let at = 0;
for (const [path, length] of list) {
  files.set(path, all.slice(at, at + length) as Uint8Array<ArrayBuffer>);
  at += length;
}

/** A workbook's parts are packed one by one, since those of all eight are alike. */
function workbook(path: string): Uint8Array<ArrayBuffer> | undefined {
  const within = `${path}/`;
  const parts = [...files].flatMap(([name, bytes]) => (name.startsWith(within) ? [[name.slice(within.length), bytes] as const] : []));
  return parts.length ? (zipSync(Object.fromEntries(parts)) as Uint8Array<ArrayBuffer>) : undefined;
}

globalThis.porewiseInside = (path) => files.get(path) ?? (path.endsWith(workbookEnd) ? workbook(path) : undefined);

/** A worker of such a page has no address to load the packages from: it is given their text. */
globalThis.porewiseReader = () => {
  const packages = [...document.querySelectorAll("script[data-package]")].map((script) => `${script.textContent};\n`);
  const loaded = "globalThis.importScripts = () => {};\n";
  return URL.createObjectURL(new Blob([...packages, loaded, files.get("reader.js")!], { type: "text/javascript" }));
};

/** Adds an element for each file that is numbered, in their order. */
function add(tag: "style" | "script", ending: string): void {
  for (const [path, bytes] of files)
    if (/^\d/.test(path) && path.endsWith(ending))
      document.head.append(Object.assign(document.createElement(tag), { textContent: new TextDecoder().decode(bytes) }));
}

add("style", ".css");
// Scripts that stand in the page by themselves have run by then.
addEventListener("DOMContentLoaded", () => add("script", ".js"));

import { unzipSync } from "fflate";
import "../../taskpane/inside";

// The first script of a page that is one file. Before it stands a zip file of all that a host would hand out, as text.
const element = document.getElementById("inside")!;
const files = unzipSync(Uint8Array.from(atob(element.textContent!.trim()), (letter) => letter.charCodeAt(0)));
element.remove();

globalThis.porewiseInside = (path) => files[path] as Uint8Array<ArrayBuffer> | undefined;

/** Adds an element for each file that ends so. */
function add(tag: "style" | "script", ending: string): void {
  for (const [path, bytes] of Object.entries(files))
    if (path.endsWith(ending))
      document.head.append(Object.assign(document.createElement(tag), { textContent: new TextDecoder().decode(bytes) }));
}

add("style", ".css");
// Scripts that stand in the page by themselves have run by then.
addEventListener("DOMContentLoaded", () => add("script", ".js"));

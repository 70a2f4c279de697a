import { MemorySheet } from "./memory";

/** A page with the pane in a frame, as the sheet's page has it; the sheet is `sheet` to whoever tests. */
declare global {
  var sheet: MemorySheet;
}

globalThis.sheet = new MemorySheet();
const saved = sessionStorage.getItem("sheet");
if (saved) for (const [place, xml] of JSON.parse(saved)) sheet.parts.set(place, xml);
addEventListener("pagehide", () => sessionStorage.setItem("sheet", JSON.stringify([...sheet.parts])));

const frame = document.querySelector("iframe")!;
frame.addEventListener("load", () => (frame.contentWindow as unknown as typeof globalThis).showPane(sheet));
frame.src = "pane.html";

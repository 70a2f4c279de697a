import { dropParts, edit } from "../../shared/xlsx/package";
import { sheetPaths } from "../../shared/xlsx/parts";
import { scan } from "../../shared/xlsx/scan";
import { unzip } from "../../shared/xlsx/unzip";
import { type Change, changed } from "../../shared/xlsx/xml";
import { zipped } from "../../shared/xlsx/zip";

const drawn = /(^|\/)(drawings|charts|media|comments|threadedComments|persons)\/|(^|\/)comments[^/]*\.xml$/;
const drawing = new Set(["drawing", "legacyDrawing", "legacyDrawingHF", "picture"]);

function undrawn(sheet: string): string {
  const changes: Change[] = [];
  scan(sheet, { close: ({ local, start }, end) => drawing.has(local) && changes.push({ start, end, text: "" }) });
  return changed(sheet, changes);
}

/** A copy without drawings and comments: Excel on the web refuses sheets that hold them. */
export function stripped(file: Uint8Array): Uint8Array {
  const parts = unzip(file);
  dropParts(parts, (path) => drawn.test(path));
  for (const path of sheetPaths(parts)) edit(parts, path, undrawn);
  return zipped(parts);
}

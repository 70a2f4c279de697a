import { relationsOf, textOf } from "../../../shared/xlsx/parts";
import { childOf, read } from "../../../shared/xlsx/xml";
import { hasPart } from "./losses";
import type { Piece } from "./piece";
import { pivotKey } from "./pivotguard";

/** The ranges of pivot tables on a sheet: the engine shows their cells but does not know pivot tables. */
export const pivots: Piece = {
  name: "pivots",
  read({ workbook: { parts }, sheets, follow }) {
    for (const { own, sheet } of sheets) {
      const found = relationsOf(parts, own.part.path).filter((one) => one.kind === "pivotTable" && parts.has(one.path));
      for (const [i, one] of found.entries()) {
        const range = childOf(read(textOf(parts, one.path)), "location")?.attributes.ref;
        if (range) follow(sheet.id, `${pivotKey}${i + 1}`, range);
      }
    }
  },
  lost: [
    ["pivot tables (their cells stay as values)", hasPart(/pivotTables\//)],
    ["slicers and timelines", hasPart(/(slicers|timelines)\//)],
  ],
};

import { childOf, childrenOf } from "../../../shared/xlsx/xml";
import type { Contents } from "../contents/contents";
import type { Piece } from "./piece";

/** The key of the range that follows the file's active cell. */
export const cursorKey = "cursor";

function cursorOf({ root }: Contents): string | undefined {
  const view = childOf(childOf(root, "sheetViews") ?? root, "sheetView");
  const cells = childrenOf(view ?? root, "selection").flatMap(({ attributes: { activeCell } }) => activeCell ?? []);
  return cells.find((cell) => /^[A-Z]+[1-9]\d*$/.test(cell) && cell !== "A1");
}

export const cursor: Piece = {
  name: "cursor",
  read({ sheets, follow }) {
    for (const { own, sheet } of sheets) {
      const cell = cursorOf(own);
      if (cell) follow(sheet.id, cursorKey, cell);
    }
  },
};

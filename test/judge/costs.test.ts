import "../sheet/file/dom";
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { read } from "@e965/xlsx";
import * as engine from "@odoo/o-spreadsheet";
import { model } from "../../sheet/engine";
import { opened } from "../../sheet/file/open";
import { recalculated } from "../../sheet/file/recalculated";
import { saved } from "../../sheet/file/save";
import { findProgram } from "../../tool/programs";
import { needing } from "../needing";
import { addresses } from "../sheet/addresses";
import { cellIn, textsOf } from "../sheet/file/workbooks";
import { convert } from "./libreoffice";
import { costs } from "./madebylibreoffice";

const second = "xl/worksheets/sheet2.xml";
for (const name of ["debug", "group", "groupEnd"] as const) jest.spyOn(console, name).mockImplementation();

let made: Uint8Array;
beforeAll(() => {
  if (findProgram("spreadsheet")) made = costs();
});

needing("spreadsheet")("another program", () => {
  it("reads every value of what was opened and saved, and calculates its own formulas to the same", async () => {
    const folder = mkdtempSync(join(tmpdir(), "saved-"));
    try {
      const workbook = opened(made, engine);
      const book = model(workbook.book);
      const sheetId = book.getters.getSheetIdByName("June batch")!;
      book.dispatch("UPDATE_CELL", { sheetId, ...addresses("F1"), content: "=PORE.RUNCOST(B4:B7,C4:C7)" });
      book.dispatch("UPDATE_CELL", { sheetId, ...addresses("F2"), content: "=-2^2" });
      book.dispatch("UPDATE_CELL", { sheetId, ...addresses("F3"), content: "=SUM(B10:B11*2)" });
      writeFileSync(join(folder, "saved.xlsx"), await saved(book, workbook, engine));
      const { F1, F2, F3, D8, E4 } = read(readFileSync(convert(join(folder, "saved.xlsx"), "xlsx", join(folder, "anew")))).Sheets[
        "June batch"
      ];
      expect([F2.v, F3.v, D8.v, E4.v]).toEqual([-4, 86, 94.5, "3/4"]);
      expect(F1.v).not.toBe(94.5);
      // LibreOffice calculates a formula of the form that Excel gives to dynamic arrays even where it is told to keep values.
      const kept = read(readFileSync(convert(join(folder, "saved.xlsx"), "xlsx", join(folder, "kept"), true))).Sheets["June batch"];
      expect([kept.F2.v, kept.D8.v]).toEqual([-4, 94.5]);
      expect(read(readFileSync(join(folder, "saved.xlsx"))).Sheets["June batch"].F1.v).toBe(94.5);
    } finally {
      rmSync(folder, { recursive: true });
    }
  });
});

needing("spreadsheet")("recalc of a workbook that LibreOffice made", () => {
  it("agrees with LibreOffice on all its formulas, and changes no byte", () => {
    const { file: again, found, left, otherErrors } = recalculated(made);
    expect([found, left, otherErrors]).toEqual([0, [], []]);
    expect(textsOf(again)).toEqual(textsOf(made));
    expect(cellIn(textsOf(again)[second], "D8")).toContain("<v>94.5</v>");
  });
});

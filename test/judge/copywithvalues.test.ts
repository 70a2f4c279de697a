import "../sheet/file/dom";
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { read, type WorkBook } from "@e965/xlsx";
import * as engine from "@odoo/o-spreadsheet";
import { model } from "../../sheet/engine";
import { opened } from "../../sheet/file/open";
import { saved } from "../../sheet/file/save";
import { workbookFile } from "../built";
import { needing } from "../needing";
import { textsOf } from "../sheet/file/workbooks";
import { withValues } from "../valued";
import { convert } from "./libreoffice";

for (const name of ["debug", "group", "groupEnd"] as const) jest.spyOn(console, name).mockImplementation();

/** Every value of a file by its address, blank ones left out. */
function valuesOf({ Sheets, SheetNames }: WorkBook): Map<string, unknown> {
  const cells = SheetNames.flatMap((name) => Object.entries(Sheets[name]).map(([address, cell]) => [`${name}!${address}`, cell] as const));
  return new Map(
    cells.filter(([key, { t, v }]) => !key.includes("!!") && t !== "z" && v !== "").map(([key, { t, v, w }]) => [key, t === "e" ? w : v]),
  );
}

/** A number may lose its last digits on the way through another program. */
const near = (a: unknown, b: unknown): boolean =>
  typeof a === "number" && typeof b === "number" ? Math.abs(a - b) <= 1e-9 * Math.max(1, Math.abs(b)) : a === b;

const differing = (made: ReadonlyMap<string, unknown>, wanted: ReadonlyMap<string, unknown>): unknown[] =>
  [...new Set([...made.keys(), ...wanted.keys()])]
    .filter((key) => !near(made.get(key), wanted.get(key)))
    .map((key) => [key, made.get(key), wanted.get(key)]);

needing("spreadsheet")("a copy of the page's workbook with values", () => {
  it("says the same in other programs, kept or calculated, and knows every function", async () => {
    const from = opened(workbookFile("live", "US", "demo"), engine);
    const before = await saved(model(from.book), from, engine);
    const { file, cells } = withValues(before);
    expect(cells).toBeGreaterThan(100);
    expect(Object.values(textsOf(file)).join("")).not.toMatch(/_xldudf_/i);
    const wanted = valuesOf(read(before));
    expect(differing(valuesOf(read(file)), wanted)).toEqual([]);
    const folder = mkdtempSync(join(tmpdir(), "copy-"));
    try {
      writeFileSync(join(folder, "copy.xlsx"), file);
      for (const keeps of [true, false]) {
        const made = valuesOf(read(readFileSync(convert(join(folder, "copy.xlsx"), "xlsx", join(folder, String(keeps)), keeps))));
        expect(differing(made, wanted)).toEqual([]);
        expect([...made.values()]).not.toContain("#NAME?");
      }
    } finally {
      rmSync(folder, { recursive: true });
    }
  });
});

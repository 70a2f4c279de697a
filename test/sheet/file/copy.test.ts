import "./dom";
import { read } from "@e965/xlsx";
import * as engine from "@odoo/o-spreadsheet";
import { model } from "../../../sheet/engine";
import { opened } from "../../../sheet/file/open";
import { saved } from "../../../sheet/file/save";
import { withValues } from "../../valued";
import { addresses } from "../addresses";
import { cellIn, textsOf } from "./workbooks";

for (const name of ["debug", "group", "groupEnd"] as const) jest.spyOn(console, name).mockImplementation();

const nothing = { documents: {}, print: {} };
const sheet = "xl/worksheets/sheet0.xml";

describe("a copy of the page's workbook with values", () => {
  it("keeps values, spilled ones too, number formats and all other formulas", async () => {
    const book = model({ sheets: [{ id: "s", name: "Costs" }] });
    const typed = {
      ...{ A1: "104", A2: "90", A3: "80", B1: "93", B2: "93", B3: "70", D1: "=PORE.MOISTURE(A1:A3,B1:B3)" },
      ...{ E1: "=PORE.MOISTURE(A1,B1)*2", F1: "=SUM(D1:D3)", G1: '="PORE.FILL(6,5,104)"', H1: "=SUM(A1:A3*2)" },
    };
    for (const [address, content] of Object.entries(typed)) book.dispatch("UPDATE_CELL", { sheetId: "s", ...addresses(address), content });
    const before = await saved(book, nothing, engine);
    const { file, cells, rules } = withValues(before);
    expect([cells, rules]).toEqual([2, 0]);
    const xml = textsOf(file)[sheet];
    expect(xml).not.toMatch(/_xldudf_/);
    expect(cellIn(xml, "D1")).toMatch(/^<c r="D1" s="\d+"><v>0\.118279569892\d+<\/v><\/c>$/);
    expect(cellIn(xml, "D2")).toMatch(/t="e".*#VALUE!/s);
    expect(cellIn(xml, "D3")).toMatch(/<v>0\.1428571428571\d+<\/v>/);
    expect([...xml.matchAll(/<f[^>]*>[^<]*<\/f>/g)].map(([formula]) => formula)).toEqual(
      ["<f>SUM(D1:D3)</f>", '<f>"PORE.FILL(6,5,104)"</f>', '<f t="array" ref="H1">SUM(A1:A3*2)</f>'].map((formula) =>
        textsOf(before)[sheet].includes(formula) ? formula : formula.replace(/"(?=PORE|<)/g, "&quot;"),
      ),
    );
    const { D1, D3, E1 } = read(file, { cellNF: true }).Sheets.Costs;
    expect([D1.w, D3.w, D1.z, E1.t]).toEqual(["11.8%", "14.3%", "0.0%", "n"]);
  });

  it("has no rule or list that calls PORE, and keeps the others", async () => {
    const book = model({
      sheets: [
        {
          id: "s",
          name: "Costs",
          cells: { A1: "4" },
          conditionalFormats: ["=PORE.DYE($A$1)>1", '=$A$1="PORE.DYE(1)"'].map((formula, i) => ({
            id: `${i}`,
            ranges: [`A${i + 1}`],
            rule: { type: "CellIsRule", operator: "customFormula", values: [formula], style: { bold: true } },
          })),
          dataValidationRules: ["=PORE.DYE($A$1)>1", "=$A$1>1"].map((formula, i) => ({
            id: `${i}`,
            ranges: [`B${i + 1}`],
            criterion: { type: "customFormula", values: [formula] },
          })),
        },
      ],
    } as never);
    const before = await saved(book, nothing, engine);
    expect(textsOf(before)[sheet].match(/_xldudf_PORE_DYE/g)).toHaveLength(2);
    const { file, cells, rules } = withValues(before);
    expect([cells, rules]).toEqual([0, 2]);
    const again = opened(file, engine).book as engine.WorkbookData;
    expect(again.sheets[0].conditionalFormats.map(({ ranges }) => ranges)).toEqual([["A2"]]);
    expect(again.sheets[0].dataValidationRules.map(({ ranges }) => ranges)).toEqual([["B2"]]);
  });
});

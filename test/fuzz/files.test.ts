import "../sheet/file/dom";
import * as engine from "@odoo/o-spreadsheet";
import fc from "fast-check";
import { Unreadable } from "../../shared/xlsx/unzip";
import { bookOf } from "../../sheet/book";
import { model } from "../../sheet/engine";
import { opened } from "../../sheet/file/open";
import { budgeted } from "../../sheet/guard";
import { f, partsOf, row, zipOf } from "../sheet/file/workbooks";

for (const name of ["debug", "warn", "error"] as const) jest.spyOn(console, name).mockImplementation();

const main = "http://schemas.openxmlformats.org/officeDocument/2006/relationships";
const note = (ref: string) =>
  `<comments xmlns="http://schemas.openxmlformats.org/spreadsheetml/2006/main"><authors><author>A</author></authors><commentList><comment ref="${ref}" authorId="0"><text><t>hot</t></text></comment></commentList></comments>`;

const whole = partsOf({
  sheets: {
    Loads: `${row(1, '<c r="A1" s="1"><v>3</v></c>', '<c r="B1" t="s"><v>0</v></c>', f("C1", "SUM(A$1:A1)"))}${row(2, '<c r="A2"><v>4</v></c>', f("C2", "SUM(A$1:A2)"), f("D2", "Shop!A1*rate"))}|<mergeCells count="1"><mergeCell ref="E1:F2"/></mergeCells><conditionalFormatting sqref="A1:A2"><cfRule type="cellIs" dxfId="0" priority="1" operator="greaterThan"><formula>3</formula></cfRule></conditionalFormatting><dataValidations count="1"><dataValidation type="list" sqref="B2"><formula1>"a,b"</formula1></dataValidation></dataValidations>`,
    Shop: row(1, '<c r="A1"><v>5</v></c>', f("B1", "_xldudf_PORE_DYE(4)")),
  },
  strings: ["maple"],
  names: '<definedName name="rate">0.5</definedName><definedName name="Here">Loads!$A$1:$A$2</definedName>',
  parts: {
    "xl/worksheets/_rels/sheet1.xml.rels": `<Relationships xmlns="http://schemas.openxmlformats.org/package/2006/relationships"><Relationship Id="n1" Type="${main}/comments" Target="../comments1.xml"/></Relationships>`,
    "xl/comments1.xml": note("B1"),
  },
});

/** Opens a file as the page does, as far as that goes without a page. It may refuse in words; it may not fail in another way. */
function attempt(file: Uint8Array): string {
  try {
    const { result } = budgeted(() => model(opened(file, engine).book));
    bookOf(result);
    return "open";
  } catch (error) {
    if (!(error instanceof Unreadable)) throw error;
    expect(error.message).toMatch(/^\S.{10,}/);
    return error.message;
  }
}

describe("damaged files", () => {
  const places = Object.keys(whole);
  const any = fc.nat({ max: 2 ** 30 });
  const pieces = ["<", "</c>", "&#0;", "]]>", "<c r='A1'>", 'r="XFD1048576"', "99999999", "-1", "__proto__", "\uFFFE", "<!DOCTYPE x>", ""];

  it("300 of them, bytes or words of their parts changed, open or are refused in words", () => {
    const seen = new Map<string, number>();
    const bytes = zipOf(whole);
    fc.assert(
      fc.property(
        fc.boolean(),
        fc.constantFrom(...places),
        fc.array(any, { minLength: 2, maxLength: 6 }),
        fc.constantFrom(...pieces),
        (raw, path, at, piece) => {
          let file: Uint8Array;
          if (raw) {
            file = bytes.slice(0, at[0] % 3 ? undefined : at[1] % bytes.length);
            for (const place of at) if (file.length) file[place % file.length] = place >> 8;
          } else {
            const text = whole[path];
            const start = at[0] % text.length;
            file = zipOf({ ...whole, [path]: text.slice(0, start) + piece + text.slice(start + (at[1] % 9)) });
          }
          const ended = attempt(file);
          seen.set(ended, (seen.get(ended) ?? 0) + 1);
        },
      ),
      { numRuns: 300 },
    );
    // Neither all opened nor all refused: the damage is neither none nor total.
    expect(seen.get("open")).toBeGreaterThan(20);
    expect(seen.size).toBeGreaterThan(3);
    expect(Object.keys(Object.prototype)).toEqual([]);
  });
});

describe("odd names and places", () => {
  const opens = (made: Parameters<typeof partsOf>[0], change: (parts: Record<string, string>) => void = () => {}) => {
    const parts = partsOf(made);
    change(parts);
    return attempt(zipOf(parts));
  };

  it.each(["__proto__", "constructor", "toString", "hasOwnProperty", "valueOf", "length"])(
    "a sheet, a name and a table called %s open like any other",
    (name) => {
      const table = `<table xmlns="http://schemas.openxmlformats.org/spreadsheetml/2006/main" id="1" name="${name}" displayName="${name}" ref="A1:B2"><tableColumns count="2"><tableColumn id="1" name="${name}"/><tableColumn id="2" name="b"/></tableColumns></table>`;
      const parts = partsOf({
        sheets: {
          [name]: `${row(1, '<c r="A1"><v>2</v></c>')}|<tableParts count="1"><tablePart r:id="t1"/></tableParts>`,
          Sums: row(1, f("A1", `'${name}'!A1+${name}`)),
        },
        names: `<definedName name="${name}">'${name}'!$A$1</definedName>`,
        parts: {
          "xl/tables/table1.xml": table,
          "xl/worksheets/_rels/sheet1.xml.rels": `<Relationships xmlns="http://schemas.openxmlformats.org/package/2006/relationships"><Relationship Id="t1" Type="${main}/table" Target="../tables/table1.xml"/></Relationships>`,
        },
      });
      const { getters } = model(opened(zipOf(parts), engine).book);
      expect(getters.getSheetIds().map((id) => getters.getSheetName(id))).toEqual([name, "Sums"]);
      expect(getters.getEvaluatedCell({ sheetId: "sheet2", col: 0, row: 0 }).value).toBe(4);
      expect(Object.keys(Object.prototype)).toEqual([]);
    },
  );

  it("two sheets of one name are refused", () => {
    const double = (parts: Record<string, string>) => {
      parts["xl/workbook.xml"] = parts["xl/workbook.xml"].replace('name="B"', 'name="a"');
    };
    expect(opens({ sheets: { A: "", B: "" } }, double)).toMatch(/two of its sheets are called a: rename one/);
  });

  it.each([
    ["a cell", row(1_048_576, '<c r="XFD1048576"><v>1</v></c>'), /reach too far/],
    ["a blank cell with a look", row(1_048_576, '<c r="XFD1048576" s="1"/>'), "open"],
    ["merged cells", `${row(1)}|<mergeCells><mergeCell ref="A1:XFD1048576"/></mergeCells>`, "open"],
    [
      "a rule",
      `${row(1)}|<conditionalFormatting sqref="A1:XFD1048576"><cfRule type="expression" dxfId="0" priority="1"><formula>TRUE</formula></cfRule></conditionalFormatting>`,
      "open",
    ],
    [
      "a rule for typing",
      `${row(1)}|<dataValidations><dataValidation type="list" sqref="A1:XFD1048576"><formula1>"a"</formula1></dataValidation></dataValidations>`,
      "open",
    ],
    ["a formula that fills them all", row(1, '<c r="A1" cm="1"><f t="array" ref="A1:XFD1048576">1</f></c>'), /fills more than/],
    ["a link", `${row(1)}|<hyperlinks><hyperlink ref="XFD1048576" location="A!A1"/></hyperlinks>`, "open"],
    ["a printed area", `${row(1)}|<rowBreaks><brk id="1048575"/></rowBreaks>`, "open"],
    ["an address of no sheet", row(1, '<c r="XFE1"><v>1</v></c>'), /damaged/],
    ["no address", row(1, '<c r="here"><v>1</v></c>'), /damaged/],
  ])("%s at the end of the largest sheet is no end of the page", (_, sheet, ended) =>
    expect(opens({ sheets: { A: sheet } })).toMatch(ended),
  );

  it("a note in the last cell of the largest sheet opens", () =>
    expect(attempt(zipOf({ ...whole, "xl/comments1.xml": note("XFD1048576") }))).toBe("open"));

  it("formulas that would fill a memory show an error, and the rest opens", () => {
    const formulas = ["SEQUENCE(1000000,1000000)", "SUM(A1:XFD1048576)", "MUNIT(99999)", 'REPT("x",1E+9)'];
    expect(opens({ sheets: { A: row(1, ...formulas.map((formula, i) => f(`${"BCDE"[i]}1`, formula))) } })).toBe("open");
  });
});

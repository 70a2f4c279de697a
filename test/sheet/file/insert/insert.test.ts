import "../dom";
import type { Model } from "@odoo/o-spreadsheet";
import * as engine from "@odoo/o-spreadsheet";
import { Unreadable } from "../../../../shared/xlsx/unzip";
import { model } from "../../../../sheet/engine";
import { inserted } from "../../../../sheet/file/insert/insert";
import { opened } from "../../../../sheet/file/open";
import { type Beside, saved } from "../../../../sheet/file/save";
import { addresses } from "../../addresses";
import { f, row, textsOf, workbookOf } from "../workbooks";
import { blank, chartOver, copied, idOf, settled } from "./onpage";

for (const name of ["debug", "group", "groupEnd"] as const) jest.spyOn(console, name).mockImplementation();

const cellOf = (book: Model, sheet: string, address: string) => {
  const position = { sheetId: idOf(book, sheet), ...addresses(address) };
  return { ...book.getters.getEvaluatedCell(position), text: book.getters.getCellText(position, { showFormula: true }) };
};

const file = (sheets: Readonly<Record<string, string>>, names = "", strings: readonly string[] = []) =>
  opened(workbookOf({ sheets, names, strings }), engine);

const v = (address: string, value: number) => `<c r="${address}"><v>${value}</v></c>`;
const t = (address: string, text: string) => `<c r="${address}" t="inlineStr"><is><t>${text}</t></is></c>`;

describe("a file of another make, inserted", () => {
  it("has every sheet that formulas, rules, lists, charts and names lead to, and no other", () => {
    const list =
      '<dataValidations count="1"><dataValidation type="list" sqref="A9"><formula1>\'By list\'!$A$1:$A$2</formula1></dataValidation></dataValidations>';
    const rule =
      '<conditionalFormatting sqref="A8"><cfRule type="expression" dxfId="0" priority="1"><formula>\'By rule\'!$A$1&gt;1</formula></cfRule></conditionalFormatting>';
    const from = file(
      {
        Other: row(1, f("A1", "Costs!A1")),
        Costs: `${row(1, f("A1", "'By formula'!A1+share"), f("B1", '"Other!A1"'))}|${rule}${list}`,
        "By formula": row(1, f("A1", "deep!A1")),
        Deep: row(1, v("A1", 1)),
        "By list": row(1, v("A1", 1)),
        "By rule": row(1, v("A1", 2)),
        "By name": row(1, v("A1", 3)),
        "By chart": row(1, v("A1", 3)),
      },
      '<definedName name="share">\'By name\'!$A$1</definedName><definedName name="unused">Other!$A$1</definedName>',
    );
    (from.book as engine.WorkbookData).sheets[1].figures.push(chartOver("'by chart'!A1:A2"));
    const { work, added } = inserted(blank(), from, ["costs"], engine);
    expect(added).toEqual(["Costs", "By formula", "Deep", "By list", "By rule", "By name", "By chart"]);
    expect(Object.keys(work.book.namedRanges)).toEqual(["share"]);
    expect(cellOf(model(work.book), "Costs", "A1").value).toBe(4);
  });

  it("follows new names in formulas, rules and lists, and not in texts", () => {
    const list =
      '<dataValidations count="2"><dataValidation type="list" sqref="A9"><formula1>Costs!$A$1:$A$2</formula1></dataValidation><dataValidation type="list" sqref="A8"><formula1>"Costs!A1,prices"</formula1></dataValidation></dataValidations>';
    const rule =
      '<conditionalFormatting sqref="A7"><cfRule type="expression" dxfId="0" priority="1"><formula>SUM(prices)&gt;Costs!$A$1</formula></cfRule></conditionalFormatting>';
    const cells = [
      f("A1", "1+1"),
      f("B1", "costs!A1+Costs!$A$1"),
      f("C1", '"Costs!A1 prices"&COUNT(prices)'),
      f("D1", "SUM(PRICES)"),
      f("E1", "NOSUCH(Costs!A1,prices)"),
      f("F1", 'LEN("it\'s Costs!A1")+prices'),
      t("G1", "Costs!A1"),
    ];
    const from = file(
      { Costs: `${row(1, ...cells)}${row(2, v("A2", 5))}|${rule}${list}` },
      '<definedName name="prices">Costs!$A$1:$A$1</definedName>',
    );
    const own = model({ sheets: [{ id: "Costs", name: "COSTS", cells: { A1: "100" } }], namedRanges: { Prices: "COSTS!A1" } } as never);
    const { work, added } = inserted({ ...blank(), book: own.exportData() }, from, ["Costs"], engine);
    expect(added).toEqual(["Costs 2"]);
    const book = settled(work.book);
    const cell = (address: string) => cellOf(book, "Costs 2", address);
    expect(cell("B1")).toMatchObject({ text: "='Costs 2'!A1+'Costs 2'!$A$1", value: 4 });
    expect(cell("C1")).toMatchObject({
      text: "=\"Costs!A1 prices\"&COUNT('Costs 2'!$A$1:$A$1)",
      value: "Costs!A1 prices1",
    });
    expect(cell("D1").value).toBe(2);
    expect(cell("E1").text).toBe("=NOSUCH('Costs 2'!A1,'Costs 2'!$A$1:$A$1)");
    expect(cell("F1").value).toBe(15);
    expect(cell("G1").value).toBe("Costs!A1");
    const { conditionalFormats, dataValidationRules } = work.book.sheets[1];
    expect(conditionalFormats.map((one) => (one.rule as { values: string[] }).values)).toEqual([
      ["=SUM('Costs 2'!$A$1:$A$1)>'Costs 2'!$A$1"],
    ]);
    expect(dataValidationRules.map(({ criterion }) => criterion.values)).toEqual([["'Costs 2'!$A$1:$A$2"], ["Costs!A1", "prices"]]);
    expect(cellOf(book, "COSTS", "A1").value).toBe(100);
  });

  it.each([['It\'s 3/4 in ("thin")'], ["a long name of thirty-one signs."], ["Größe & Gewicht"], ["SUM"], ["A1"]])(
    "may have a sheet called %s",
    async (given) => {
      const name = given.replace("/", "-").slice(0, 31);
      const quoted = `'${name.replace(/'/g, "''")}'`;
      const xml = (text: string) => text.replace(/&/g, "&amp;").replace(/"/g, "&quot;");
      const from = file(
        { [xml(name)]: row(1, v("A1", 7)), Total: "", Costs: row(1, f("A1", `${quoted}!A1*2+SUM(seven)`)) },
        `<definedName name="seven">${xml(quoted)}!$A$1</definedName>`,
      );
      const once = inserted(blank(), from, ["Costs"], engine);
      const { work, added } = inserted(once.work, from, [name, "Costs"], engine);
      expect(added[0]).toMatch(/ 2$/);
      expect(added[0].length).toBeLessThanOrEqual(31);
      const book = settled(work.book);
      book.dispatch("UPDATE_CELL", { sheetId: idOf(book, added[0]), ...addresses("A1"), content: "10" });
      expect([cellOf(book, "Costs", "A1").value, cellOf(book, "Costs 2", "A1").value]).toEqual([21, 30]);
      const again = model(opened(await saved(book, work, engine), engine).book);
      expect([cellOf(again, "Costs", "A1").value, cellOf(again, "Costs 2", "A1").value]).toEqual([21, 30]);
    },
  );

  it("keeps off numbered names that are taken there or here", () => {
    const own = model({
      sheets: [
        { id: "1", name: "A" },
        { id: "2", name: "A 2" },
      ],
    } as never);
    const from = file({ A: "", "A 3": "", "a 4": "" });
    expect(inserted({ ...blank(), book: own.exportData() }, from, ["A", "A 3", "A 4"], engine).added).toEqual(["A 5", "A 3", "a 4"]);
  });

  it("adds nothing when nothing is wanted", () => {
    const work = blank();
    expect(inserted(work, file({ A: "" }), [], engine)).toEqual({ work, added: [] });
  });

  it("says which sheet it does not have", () => {
    expect(() => inserted(blank(), file({ A: "" }), ["A", "B"], engine)).toThrow(new Unreadable("it has no sheet named B"));
  });

  it("keeps documents of the workbook, and brings those that it has not", () => {
    const from = { ...file({ A: "" }), documents: { "urn:a": "<theirs/>", "urn:b": "<b/>" } };
    expect(inserted({ ...blank(), documents: { "urn:a": "<own/>" } }, from, ["A"], engine).work.documents).toEqual({
      "urn:a": "<own/>",
      "urn:b": "<b/>",
    });
  });

  it("has links that lead to the very cells, on its own sheets", async () => {
    const from = file(
      {
        Costs: `${row(1, v("A1", 2), '<c r="B1" t="s"><v>0</v></c>')}|<hyperlinks><hyperlink ref="B1" location="Notes!C3" tooltip="See it"/></hyperlinks>`,
        Notes: row(3, v("C3", 1)),
      },
      "",
      ["there"],
    );
    const once: Beside & { book: engine.WorkbookData } = inserted(blank(), from, ["Costs", "Notes"], engine).work;
    const { work } = inserted(once, from, ["Costs", "Notes"], engine);
    const again = opened(await saved(model(copied(work.book)), work, engine), engine);
    const names = (again.book as engine.WorkbookData).sheets.map(({ name }) => name);
    expect(names).toEqual(["Sheet1", "Costs", "Notes", "Costs 2", "Notes 2"]);
    const [, first, , second, notes] = Object.keys(again.links!);
    expect(again.links![second][0]).toMatchObject({ tooltip: "See it", to: { sheetId: notes } });
    expect((again.book as { followed?: object }).followed).toMatchObject({
      [notes]: { [`link 0 of ${second}`]: "C3" },
      sheet3: { [`link 0 of ${first}`]: "C3" },
    });
    const alone = inserted(once, from, ["Costs"], engine).work;
    expect(alone.links![alone.book.sheets.at(-1)!.id]).toEqual([{ key: "link 0", tooltip: "See it" }]);
  });

  it("has number formats as they were spelt, where the workbook does not spell them itself", () => {
    const spelt = (...formats: [engine: string, file: string][]) => ({ looks: { formats } });
    const work = { ...blank(), ...spelt(["0.0", "0.0;own"]) };
    const from = { ...file({ A: "" }), ...spelt(["0.0", "0.0;theirs"], ["0.00", "0.00_)"]) };
    expect(inserted(work, from, ["A"], engine).work).toMatchObject(spelt(["0.0", "0.0;own"], ["0.00", "0.00_)"]));
  });

  it("has whole columns fixed where a name stood for them", async () => {
    const from = file({ A: `${row(1, v("A1", 2))}${row(2, f("B2", "SUM(all)"))}` }, '<definedName name="all">A!$A:$A</definedName>');
    const once = inserted(blank(), from, ["A"], engine).work;
    const { work } = inserted(once, from, ["A"], engine);
    const book = settled(work.book);
    expect(cellOf(book, "A 2", "B2").text).toBe("=SUM('A 2'!$A:$A)");
    expect(textsOf(await saved(book, work, engine))["xl/workbook.xml"]).toContain('<definedName name="all">A!$A:$A</definedName>');
  });
});

import "./dom";
import type { Model } from "@odoo/o-spreadsheet";
import * as engine from "@odoo/o-spreadsheet";
import { Unreadable } from "../../../shared/xlsx/unzip";
import { bookOf } from "../../../sheet/book";
import { model } from "../../../sheet/engine";
import { inserted } from "../../../sheet/file/insert/insert";
import { type Opened, opened } from "../../../sheet/file/open";
import { type Beside, saved } from "../../../sheet/file/save";
import { workbookFile } from "../../built";
import { addresses } from "../addresses";
import { f, row, textsOf, workbookOf } from "./workbooks";

for (const name of ["debug", "group", "groupEnd"] as const) jest.spyOn(console, name).mockImplementation();

const blank = () => ({ book: model().exportData(), documents: {}, print: {} });
const { deepCopy: copied } = engine.helpers;
const frozen = <T>(item: T): T => {
  if (item && typeof item === "object" && !ArrayBuffer.isView(item) && !Object.isFrozen(item)) {
    Object.freeze(item);
    Object.values(item).forEach(frozen);
  }
  return item;
};

/** Opened, kept and opened again, as the page does: looks that are the usual ones are gone by then. */
const settled = (book: object): Model => model(JSON.parse(JSON.stringify(bookOf(model(copied(book))).book)));

const idOf = ({ getters }: Model, name: string): string => getters.getSheetIds().find((id) => getters.getSheetName(id) === name)!;

/** Everything that a sheet shows. */
function shown(book: Model, name: string) {
  const { getters } = book;
  const sheetId = idOf(book, name);
  // A spill that once was longer leaves cells behind that hold nothing: whether it was depends on the order of evaluation.
  return getters.getEvaluatedCellsPositions(sheetId).flatMap(({ row, col }) => {
    const position = { sheetId, row, col };
    const { value, formattedValue, format } = getters.getEvaluatedCell(position);
    if (value === null) return [];
    return [[row, col, value, formattedValue, format, getters.getCellComputedStyle(position), getters.getCellComputedBorder(position)]];
  });
}

const cellOf = (book: Model, sheet: string, address: string) => {
  const position = { sheetId: idOf(book, sheet), ...addresses(address) };
  return { ...book.getters.getEvaluatedCell(position), text: book.getters.getCellText(position, { showFormula: true }) };
};

const file = (sheets: Readonly<Record<string, string>>, names = "", strings: readonly string[] = []) =>
  opened(workbookOf({ sheets, names, strings }), engine);

const v = (address: string, value: number) => `<c r="${address}"><v>${value}</v></c>`;
const t = (address: string, text: string) => `<c r="${address}" t="inlineStr"><is><t>${text}</t></is></c>`;

/** A chart in the corner of a sheet. */
const chartOver = (dataRange: string, more: object = {}) => ({
  ...{ id: "1", tag: "chart", col: 0, row: 0, offset: { x: 0, y: 0 }, width: 9, height: 9 },
  data: { type: "line", dataSource: { type: "range", dataSets: [{ dataSetId: "0", dataRange }], dataSetsHaveTitle: false }, ...more },
});

describe("the workbook of the project, inserted", () => {
  let from: Opened;
  let alone: Model;
  let names: string[];

  beforeAll(async () => {
    from = frozen(opened(workbookFile("live", "US", "demo"), engine));
    alone = settled(from.book);
    names = alone.getters.getSheetIds().map((id) => alone.getters.getSheetName(id));
  });

  it("whole into a blank one, shows all that it shows alone, in sizes, rules, lists, charts and print", () => {
    const { work, added } = inserted(frozen(blank()), from, names, engine);
    expect(added).toEqual(names);
    const book = settled(work.book);
    expect(book.getters.getSheetIds().map((id) => book.getters.getSheetName(id))).toEqual(["Sheet1", ...names]);
    for (const name of names) expect([name, shown(book, name)]).toEqual([name, shown(alone, name)]);
    const rest = ({ sheets }: engine.WorkbookData) =>
      sheets
        .filter(({ name }) => name !== "Sheet1")
        .map(({ name, cols, rows, merges, panes, conditionalFormats, dataValidationRules, tables, figures, areGridLinesVisible }) => ({
          ...{ name, cols, rows, merges, panes, conditionalFormats, dataValidationRules, tables, areGridLinesVisible },
          figures: figures.map(({ id, data: { chartId, ...data }, ...figure }) => ({ ...figure, data })),
        }));
    expect(rest(book.exportData())).toEqual(rest(alone.exportData()));
    expect(book.exportData().namedRanges).toEqual(alone.exportData().namedRanges);
    expect(Object.values(work.print)).toEqual(Object.values(from.print));
    expect(work.documents).toEqual(from.documents);
  });

  it("in part, brings what its sheets take numbers from and no more", () => {
    const { work, added } = inserted(blank(), from, ["Today"], engine);
    expect(added).toEqual(names.filter((name) => added.includes(name)));
    expect(added).toEqual(expect.arrayContaining(["My Shop", "Blanks", "Today", "Woods"]));
    expect(added).not.toContain("Start");
    const book = settled(work.book);
    for (const name of added) expect([name, shown(book, name)]).toEqual([name, shown(alone, name)]);
    expect(JSON.stringify(work.book)).not.toContain("#REF");
  });

  it("leaves of links to sheets that stay behind the words", () => {
    const { work, added } = inserted(blank(), from, ["Start", "Woods"], engine);
    const book = settled(work.book);
    expect(added).not.toContain("Handout");
    const texts = ["Woods", "Handout"].map((name) => shown(book, "Start").find(([, , value]) => value === name)!);
    const links = texts.map(([row, col]) => {
      const { link } = book.getters.getEvaluatedCell({ sheetId: idOf(book, "Start"), row, col } as engine.CellPosition);
      return link?.url;
    });
    expect(links).toEqual([`o-spreadsheet://${idOf(book, "Woods")}`, undefined]);
  });

  it("twice, has numbers after its names, shows the same twice, and leaves the first as it was", () => {
    const once = inserted(blank(), from, names, engine).work;
    const first = settled(once.book);
    const beside = { documents: once.documents, print: once.print };
    const kept = frozen({ ...beside, book: first.exportData() });
    const { work, added } = inserted(kept, from, names, engine);
    expect(added).toEqual(names.map((name) => `${name} 2`));
    expect(work.book.sheets.slice(0, kept.book.sheets.length)).toEqual(kept.book.sheets);
    const both = settled(work.book);
    for (const name of names) {
      expect([name, shown(both, name)]).toEqual([name, shown(alone, name)]);
      expect([name, shown(both, `${name} 2`)]).toEqual([name, shown(alone, name)]);
    }
    expect(both.exportData().namedRanges).toEqual(kept.book.namedRanges);
    const [ids, figures] = [work.book.sheets, work.book.sheets.flatMap((sheet) => sheet.figures)].map((all) => all.map(({ id }) => id));
    expect([new Set(ids).size, new Set(figures).size]).toEqual([ids.length, figures.length]);
    const charts = work.book.sheets
      .slice(kept.book.sheets.length)
      .flatMap((sheet) => sheet.figures.flatMap(({ data }) => (data.dataSource ? [[sheet.name, data.dataSource]] : [])));
    expect(charts.length).toBeGreaterThan(1);
    for (const [name, { labelRange, dataSets }] of charts)
      for (const range of [labelRange, ...dataSets.map((one: { dataRange: string }) => one.dataRange)]) expect(range).toMatch(`'${name}'!`);
    // The second works for itself: it follows its own shop and its own pieces.
    const change = (sheet: string, label: string, content: string) => {
      const at = shown(both, sheet).find(([, col, value]) => col === 0 && value === label)!;
      both.dispatch("UPDATE_CELL", { sheetId: idOf(both, sheet), row: at[0] as number, col: 1, content });
    };
    const [first1, first2] = ["Blanks", "Loads"].map((name) => shown(both, name));
    const before = shown(both, "Blanks 2");
    change("My Shop 2", "fullness", "0.9");
    const after = shown(both, "Blanks 2");
    expect(after).not.toEqual(before);
    change("Blanks 2", "spalted boxelder", "40");
    expect(shown(both, "Blanks 2")).not.toEqual(after);
    expect(["Blanks", "Loads"].map((name) => shown(both, name))).toEqual([first1, first2]);
    const thrice = inserted({ ...work, book: both.exportData() }, from, ["Woods"], engine);
    expect(thrice.added).toEqual(["Woods 3"]);
  });

  it("saved and opened again, is all there", async () => {
    const once = inserted(blank(), from, ["Today", "Loads"], engine);
    const { work, added } = inserted(once.work, from, ["Today", "Loads"], engine);
    const book = model(copied(work.book));
    const again = opened(await saved(book, work, engine), engine);
    expect([again.lost, again.unknown]).toEqual([[], []]);
    const other = model(again.book);
    const values = (of: Model, name: string) => shown(of, name).map(([row, col, value]) => [row, col, value]);
    for (const name of [...once.added, ...added]) expect([name, values(other, name)]).toEqual([name, values(book, name)]);
    const kept = <T>(of: Readonly<Record<string, T>>, book: object, name: string): T =>
      of[(book as engine.WorkbookData).sheets.find((one) => one.name === name)!.id];
    const printed = Object.entries(kept(from.print, from.book, "Blanks").names);
    expect(printed.length).toBeGreaterThan(0);
    expect(kept(again.print, again.book, "Blanks 2").names).toEqual(
      Object.fromEntries(printed.map(([name, range]) => [name, range.replaceAll("Blanks!", "'Blanks 2'!")])),
    );
    expect(again.documents).toEqual(from.documents);
    const today = (again.book as engine.WorkbookData).sheets.find(({ name }) => name === "Today 2")!;
    expect(today.figures[0].data.dataSource.labelRange).toMatch(/^'Today 2'!/);
    expect(kept(again.tables!, again.book, "Blanks 2").map(({ name }) => name)).toEqual(["BlanksTable2"]);
    const counted = ({ book, links, charts }: typeof from, name: string) => [
      kept(links!, book, name).length,
      Object.keys(kept(charts!, book, name)).length,
    ];
    expect(counted(again, "Blanks 2")).toEqual(counted(from, "Blanks"));
    const drawn = (charts: NonNullable<Beside["charts"]>, book: object, name: string) =>
      Object.values(kept(charts, book, name))
        .map((one) => `${one.name}: ${one.alt}`)
        .sort();
    expect(drawn(again.charts!, again.book, "Today 2")).toEqual(drawn(from.charts!, from.book, "Today"));
  });

  it("beside a person's own sheets of the same names, changes nothing of theirs", () => {
    const own = model({
      sheets: [
        {
          id: "a",
          name: "blanks",
          cells: { A1: "oak", A2: "=SUM(MyShop)", A3: "=Prices!A1" },
          styles: { A1: 7 },
          formats: { A2: 3 },
          borders: { A1: 2 },
        },
        {
          id: "Blanks",
          name: "Prices",
          cells: { A1: "4", B1: "5", C1: "=A1*B1" },
          figures: [chartOver("A1:B1", { chartId: "figure", title: { text: "Blanks!A1" } })],
        },
      ],
      styles: { 7: { bold: true, textColor: "#112233" } },
      formats: { 3: "0.000" },
      borders: { 2: { top: { style: "thin", color: "#112233" } } },
      namedRanges: { myshop: "Prices!A1:B1" },
    } as never);
    const checklist = { "urn:porewise:checklist": "<mine/>" };
    const before = frozen({ book: own.exportData(), documents: checklist, print: { "My Shop": { elements: [], fits: true, names: {} } } });
    const { work, added } = inserted(before, from, ["Blanks", "Today"], engine);
    expect(added).toContain("Blanks 2");
    expect(added).toContain("Today");
    const book = settled(work.book);
    for (const name of ["blanks", "Prices"]) expect(shown(book, name)).toEqual(shown(own, name));
    expect(book.exportData().sheets.slice(0, 2)).toEqual(own.exportData().sheets);
    for (const name of added) {
      const old = name.replace(/ 2$/, "");
      expect([name, shown(book, name)]).toEqual([name, shown(alone, old)]);
    }
    const { MyShop, Pieces, ...others } = alone.exportData().namedRanges;
    expect([MyShop, Pieces]).toEqual([expect.stringMatching(/^'My Shop'!/), expect.stringMatching(/^Blanks!/)]);
    // Names of the sheets that came along, each on its sheet's new name.
    const joined = Object.entries({ Pieces, ...others })
      .map(([name, range]) => [name, range.replace(/^Blanks!/, "'Blanks 2'!")])
      .filter(([, range]) => added.includes(range.replace(/!.*/, "").replace(/'/g, "")));
    expect(book.exportData().namedRanges).toEqual({
      myshop: "Prices!A1:B1",
      ...Object.fromEntries(joined),
    });
    expect(work.documents).toEqual(checklist);
    expect(work.print["My Shop"]).toEqual({ elements: [], fits: true, names: {} });
    expect(Object.keys(work.print)).toHaveLength(added.length + 1);
  });
});

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

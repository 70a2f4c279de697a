import "../dom";
import type { Model } from "@odoo/o-spreadsheet";
import * as engine from "@odoo/o-spreadsheet";
import { model } from "../../../../sheet/engine";
import { inserted } from "../../../../sheet/file/insert/insert";
import { type Opened, opened } from "../../../../sheet/file/open";
import { type Beside, saved } from "../../../../sheet/file/save";
import { workbookFile } from "../../../built";
import { blank, chartOver, copied, idOf, settled, shown } from "./onpage";

for (const name of ["debug", "group", "groupEnd"] as const) jest.spyOn(console, name).mockImplementation();

const frozen = <T>(item: T): T => {
  if (item && typeof item === "object" && !ArrayBuffer.isView(item) && !Object.isFrozen(item)) {
    Object.freeze(item);
    Object.values(item).forEach(frozen);
  }
  return item;
};

describe("the template, inserted", () => {
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

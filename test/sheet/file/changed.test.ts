import "./dom";
import * as engine from "@odoo/o-spreadsheet";
import { model } from "../../../sheet/engine";
import { type Opened, opened } from "../../../sheet/file/open";
import { saved } from "../../../sheet/file/save";
import { workbookFile } from "../../built";
import { held } from "./held";
import { textsOf } from "./workbooks";

for (const name of ["debug", "group", "groupEnd"] as const) jest.spyOn(console, name).mockImplementation();

let template: Uint8Array;
let workbook: Opened;
let page: engine.Model;

beforeAll(async () => {
  template = workbookFile("plain", "US", "demo");
  workbook = opened(template, engine);
  page = model(workbook.book);
});

const idOf = (name: string) => page.getters.getSheetIds().find((id) => page.getters.getSheetName(id) === name)!;

describe("a workbook that was changed on the page", () => {
  /** The plain template with some changes, saved. */
  async function changed(...changes: readonly (readonly [type: string, payload: object])[]) {
    const book = model(JSON.parse(JSON.stringify(workbook.book)));
    for (const [type, payload] of changes) {
      const { sheetId } = payload as { sheetId: string };
      book.dispatch(type as never, { ...payload, sheetId: idOf(sheetId) } as never);
    }
    const file = await saved(book, workbook, engine);
    return { file, sheets: held(file).sheets as Record<string, Record<string, any>>, names: held(file).names };
  }
  const first = () => held(template).sheets as Record<string, Record<string, any>>;
  const rowsAbove = (sheetName: string, quantity: number) =>
    ["ADD_COLUMNS_ROWS", { sheetId: sheetName, sheetName, dimension: "ROW", position: "before", base: 0, quantity }] as const;
  const down = (text: string, rows: number) => text.replace(/(\$?[A-Z]+\$?)(\d+)/g, (_, column, row) => column + (Number(row) + rows));

  it("has everything two rows further down after two rows came in at the top", async () => {
    const { sheets } = await changed(rowsAbove("Today", 2));
    const [was, is] = [first().Today, sheets.Today];
    expect(Object.keys(is.notes)).toEqual(Object.keys(was.notes).map((cell) => down(cell, 2)));
    const rules = (sheet: Record<string, any>, rows: number) =>
      sheet.validations.map(({ sqref, error }: { sqref: string; error: string }) => `${down(sqref, rows)} ${error}`).sort();
    expect(rules(is, 0)).toEqual(rules(was, 2));
    const placed = ({ from }: { from: string }) => from.split(" ").map(Number)[2];
    expect(placed(is.charts[0])).toBe(placed(was.charts[0]) + 2);
    const references = (chart: string) => [...chart.matchAll(/f\[\]\((.*?)\)/g)].map(([, reference]) => reference);
    expect(references(is.charts[0].chart)).toEqual(references(was.charts[0].chart).map((one) => down(one, 2)));
    expect(is.charts[0].alt).toBe(was.charts[0].alt);
  });

  it("prints two rows further down, and counts them in, where two rows came in at the top", async () => {
    const { names } = await changed(rowsAbove("Handout", 2));
    const area = (all: readonly string[]) => all.find((name) => name.startsWith("Handout _xlnm.Print_Area"))!;
    const ends = (name: string) => Number(/(\d+)$/.exec(name)![1]);
    expect(ends(area(names))).toBe(ends(area(held(template).names)) + 2);
  });

  it("leads its links and charts to a sheet by its new name, and keeps what is printed of it", async () => {
    const { sheets, names } = await changed(["RENAME_SHEET", { sheetId: "Today", oldName: "Today", newName: "The demo" }]);
    const links = (sheet: Record<string, any>) => sheet.links.filter((link: string) => /Today|The demo/.test(link)) as string[];
    expect(links(sheets.Start).length).toBe(links(first().Start).length);
    for (const link of links(sheets.Start)) expect(link).toContain("'The demo'!A1");
    const today = sheets["The demo"];
    expect(today.notes).toEqual(first().Today.notes);
    expect(today.charts[0].chart).toBe(first().Today.charts[0].chart.replace(/Today!/g, "'The demo'!"));
    const told = held(template).names.filter((name: string) => name.includes("Today!"));
    expect(told.length).toBeGreaterThan(3);
    expect(names.filter((name) => name.includes("The demo"))).toEqual(
      told.map((name: string) => name.replace("Today!", "The demo!").replace(/^Today /, "The demo ")),
    );
  });

  it("holds nothing of a sheet that is gone", async () => {
    const { file, sheets } = await changed(["DELETE_SHEET", { sheetId: "Loads", sheetName: "Loads" }]);
    expect(Object.keys(sheets)).toHaveLength(Object.keys(first()).length - 1);
    const { Loads: _, ...rest } = first();
    for (const name of Object.keys(rest)) {
      expect([name, sheets[name].notes, sheets[name].tables, sheets[name].print]).toEqual([
        name,
        rest[name].notes,
        rest[name].tables,
        rest[name].print,
      ]);
    }
    expect(Object.values(textsOf(file)).join("")).not.toContain("The week of the plan");
  });

  it("has no words left over from a rule, a chart or a noted cell that somebody changed", async () => {
    const data = workbook.book as { sheets: { id: string; dataValidationRules: any[]; figures: any[] }[] };
    const today = data.sheets.find(({ id }) => id === idOf("Today"))!;
    const rule = today.dataValidationRules.find(({ criterion }) => criterion.type === "customFormula")!;
    const [cell] = Object.keys(first().Today.notes);
    const row = Number(/\d+/.exec(cell)![0]) - 1;
    const { sheets } = await changed(
      [
        "ADD_DATA_VALIDATION_RULE",
        {
          sheetId: "Today",
          ranges: rule.ranges.map((range: string) => page.getters.getRangeDataFromXc(idOf("Today"), range)),
          rule: { id: rule.id, isBlocking: false, criterion: { type: "isBetween", values: ["1", "2"] } },
        },
      ],
      [
        "UPDATE_CHART",
        {
          sheetId: "Today",
          figureId: today.figures[0].id,
          chartId: today.figures[0].data.chartId,
          definition: { ...today.figures[0].data, title: { text: "Another title" }, chartId: undefined },
        },
      ],
      ["REMOVE_COLUMNS_ROWS", { sheetId: "Today", sheetName: "Today", dimension: "ROW", elements: [row] }],
    );
    const [was, is] = [first().Today, sheets.Today];
    const other = is.validations.find(
      ({ formula1, formula2 }: { formula1: string; formula2: string }) => formula1 === "1" && formula2 === "2",
    );
    expect(other).toMatchObject({ type: "decimal" });
    expect(other.error).toBeUndefined();
    expect([is.charts[0].alt, /Another title/.test(is.charts[0].chart)]).toEqual([undefined, true]);
    expect(Object.keys(is.notes)).toHaveLength(Object.keys(was.notes).length - 1);
  });
});

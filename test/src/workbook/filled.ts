import type { Outcome } from "../../../shared/outcome";
import type { System } from "../../../shared/unittable";
import { type Formula, written } from "../../../src/workbook/formula";
import { key, ofKey, type Ref, refTo } from "../../../src/workbook/place";
import { type Template, template } from "../../../src/workbook/sheets/template";
import { validationsOf } from "../../../src/workbook/validation";
import { calculated } from "./calculated";

type Value = string | number | undefined;
/** Values by their columns, where not one in the second. */
type Across = Readonly<Record<number, Value>>;

/** What to type beside which label of a sheet, or in which row ("@21"), before it is calculated; undefined empties the cell. */
type Typing = Readonly<Record<string, Readonly<Record<string, Value | Across>>>>;

/** The template, calculated, with eyes for one sheet. */
export function filled(name: string, typing: Typing = {}, system: System = "US", which: "demo" | "empty" = "demo") {
  const whole: Template = template(system, which);
  const sheetOf = (sheet: string) => whole.book.sheets.find((one) => one.name === sheet)!;
  const rowsOf = (sheet: string, label: string) =>
    [...sheetOf(sheet).cells].flatMap(([at, { value }]) => (value === label && at.endsWith(",0") ? [ofKey(at)[0]] : []));
  const rowOf = (sheet: string, label: string) => {
    const [row] = rowsOf(sheet, label);
    if (row === undefined) throw new Error(`no row of ${sheet} is called ${label}`);
    return row;
  };
  for (const [sheet, cells] of Object.entries(typing))
    for (const [label, typed] of Object.entries(cells))
      for (const [column, value] of Object.entries(typeof typed === "object" ? typed : { 1: typed })) {
        const row = label.startsWith("@") ? Number(label.slice(1)) - 1 : rowOf(sheet, label);
        const at = key(row, Number(column));
        sheetOf(sheet).cells.set(at, { ...sheetOf(sheet).cells.get(at), formula: undefined, value });
      }
  const cached = calculated(`${system} ${which}`, whole);
  const sheet = sheetOf(name);
  const titled = (title: string): Ref[] =>
    [...sheet.cells].flatMap(([at, { value, look }]) =>
      value === title && /heading|bar/i.test(look ?? "") ? [refTo(name, ...ofKey(at))] : [],
    );
  const value = (row: number, column: number): Outcome | undefined => cached.value(name, row, column);
  return {
    whole,
    sheet,
    value,
    /** What another sheet shows. */
    shown: (of: string, row: number, column: number): Outcome | undefined => cached.value(of, row, column),
    rows: (label: string) => rowsOf(name, label),
    /** The cell in a row that has a label, by its column. */
    beside: (label: string, column = 1) => value(rowOf(name, label), column),
    /** The cells under a heading, so many of them. */
    under: (title: string, rows: number, nth = 0) => {
      const { row, column } = titled(title)[nth];
      return Array.from({ length: rows }, (_, i) => value(row + 1 + i, column));
    },
    /** The rules laid over the cell beside a label, in built-in syntax. */
    alerts: (label: string) =>
      sheet.alerts
        .filter(({ over }) => over.column === 1 && over.row === rowOf(name, label))
        .map(({ as, when }: { as: string; when: Formula }) => `${as}: ${written(when, whole.live(), name, "alert")}`),
    /** What may be typed, by the range it holds for. */
    validations: validationsOf(sheet),
    texts: [...sheet.cells.values()].flatMap(({ value }) => (typeof value === "string" ? [value] : [])),
  };
}

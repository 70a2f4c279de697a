import type { Look } from "../book";
import { type Formula, formula } from "../formula";
import type { Page } from "../page";
import { between, type Ref, refTo } from "../place";
import { failed, ownReason, verdict } from "../verdict";

export type Each<T> = readonly [T, T, T];
export const each = <T>(of: (load: number) => T): Each<T> => [of(0), of(1), of(2)];

/** Columns of a line: label, the loads, unit, and what is said of it. */
const at = { unit: 4, note: 6 };

export interface Told {
  readonly unit?: string | Formula;
  readonly format?: string;
  readonly look?: Look;
  /** The note where all loads have a value, and where one has none. */
  readonly good?: string | Formula;
  readonly bad?: string;
  readonly gone?: string;
}

function beside(page: Page, row: number, { unit, note }: { unit?: string | Formula; note?: string | Formula }): void {
  const content = (text: string | Formula) => (typeof text === "string" ? { value: text } : { formula: text });
  page.put(row, at.unit, { ...(unit ? content(unit) : {}), look: "unit" });
  if (note) page.put(row, at.note, { ...content(typeof note === "string" ? note : ownReason(note)), look: "note" });
}

/** One value for each load. */
export function threeLine(page: Page, label: string, made: (load: number) => Formula, told: Told = {}): Each<Ref> {
  const { row } = page;
  page.put(row, 0, { value: label, look: "label" });
  const refs = each((load) => page.put(row, 1 + load, { formula: made(load), format: told.format, look: told.look ?? "result" }));
  const { good, bad } = told;
  const note = bad
    ? formula`IF(OR(${failed(refs[0])},${failed(refs[1])},${failed(refs[2])}),"${bad}",${typeof good === "object" ? good : formula`"${good ?? ""}"`})`
    : good;
  beside(page, row, { unit: told.unit, note });
  if (bad) for (const ref of refs) page.alert("bad", ref, failed(ref));
  page.row++;
  return refs;
}

/** One value for the whole run. */
export function oneLine(page: Page, label: string, made: Formula, told: Told = {}): Ref {
  const { row } = page;
  page.put(row, 0, { value: label, look: "label" });
  const ref = page.put(row, 1, { formula: made, format: told.format, look: told.look ?? "result" });
  const { good, bad } = told;
  beside(page, row, { unit: told.unit, note: bad ? verdict(ref, typeof good === "string" ? good : "", bad, told.gone) : good });
  if (bad) page.alert("bad", ref, failed(ref));
  page.row++;
  return ref;
}

/** Cells to write into: one for each load. */
export function threeInputs(
  page: Page,
  label: string,
  {
    unit,
    note,
    format,
    most = 1e6,
    values,
  }: { unit?: string | Formula; note?: string; format?: string; most?: number; values?: readonly (number | undefined)[] },
): Each<Ref> {
  const { row } = page;
  page.put(row, 0, { value: label, look: "label" });
  const refs = each((load) => page.put(row, 1 + load, { value: values?.[load], format, look: "input", allowed: { from: 0, to: most } }));
  beside(page, row, { unit, note });
  page.row++;
  return refs;
}

/** The problem of a step, in the row below it; empty where there is none. */
export function problem(page: Page, made: Formula): Ref {
  const ref = refTo(page.sheet.name, page.row, 0);
  page.say(made, "note");
  page.alert("bad", ref, formula`LEN(${ref})>0`);
  return ref;
}

export const across = (refs: Each<Ref>): Ref => between(refs[0], refs[2]);

import { isFault, type Outcome } from "../../shared/outcome";
import type { Sheet } from "./book";
import type { Cached } from "./cached";
import { type Edition, type Formula, isAsk, isRef, textLiteral } from "./formula";
import { isCell, isColumn, key, type Ref, type Row, refText, refTo } from "./place";

export type Typed = (ref: Ref) => Outcome | undefined;

/** What was typed into a cell; undefined where a formula fills it. */
export const valuesOf =
  (sheets: readonly Sheet[]): Typed =>
  ({ sheet, row, column }) =>
    sheets.find(({ name }) => name === sheet)?.cells.get(key(row, column))?.value;

/** Columns longer than this are not compared. */
const longest = 12;

/** Everything that a formula refers to, in its questions and in its formulas too. */
const refsIn = ({ pieces }: Formula, edition: Edition): Ref[] =>
  pieces.flatMap((piece) => {
    if (isRef(piece)) return [piece];
    if (typeof piece !== "object") return [];
    if (!isAsk(piece)) return refsIn(piece, edition);
    return [...Object.values(piece.given).filter(isRef), ...(edition.leansOn?.(piece) ?? [])];
  });

/** The cells that a formula reads in one row, each by itself. */
function readCells(formula: Formula, edition: Edition, row: Row): Ref[] {
  return refsIn(formula, edition).flatMap((ref) => {
    if (isColumn(ref)) return typeof row === "number" ? [refTo(ref.sheet, ref.row + row, ref.column)] : [];
    if (isCell(ref)) return [{ ...ref, whole: undefined }];
    if (ref.columns > 1 || ref.rows > longest) return [];
    return Array.from({ length: ref.rows }, (_, i) => refTo(ref.sheet, ref.row + i, ref.column));
  });
}

const numberText = (n: number): string => String(n).replace("e", "E");

/** A value as a formula writes it out. */
export const valueText = (value: Outcome | undefined): string =>
  typeof value === "number"
    ? numberText(value)
    : typeof value === "boolean"
      ? String(value).toUpperCase()
      : textLiteral(isFault(value) ? value.message : (value ?? ""));

function stillSays(cell: string, value: Outcome | undefined, typed: boolean): string {
  if (isFault(value)) return `ISTEXT(${cell})`;
  if (typeof value !== "number" || typed || value === 0) return `${cell}=${valueText(value)}`;
  return `ABS(${cell}-${numberText(value)})<${numberText(Math.abs(value) * 1e-9)}`;
}

/** True in built-in syntax for as long as the cells that a formula reads say what they said; undefined where it reads none. */
export function stillSaid(formula: Formula, edition: Edition, from: string, row: Row, cached: Cached, typed: Typed): string | undefined {
  const seen = new Map<string, string>();
  for (const ref of readCells(formula, edition, row)) {
    const cell = refText(ref, from, row);
    const set = typed(ref);
    seen.set(cell, stillSays(cell, set ?? cached.value(ref.sheet, ref.row, ref.column), set !== undefined));
  }
  return seen.size ? `IFERROR(AND(${[...seen.values()].join(",")}),FALSE)` : undefined;
}

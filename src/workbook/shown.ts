import { type Fault, isFault, type Outcome } from "../../shared/outcome";
import type { Cell, Sheet } from "./book";
import { asksIn, type Edition, type Formula, isAsk, isRef, textLiteral, written } from "./formula";
import { isColumn, key, ofKey, type Ref, type Row, refText, refTo } from "./place";

/** What formulas showed when the book was last calculated. */
export interface Cached {
  value(sheet: string, row: number, column: number): Outcome | undefined;
  /** How many cells a formula filled. */
  spill(sheet: string, row: number, column: number): { readonly rows: number; readonly columns: number };
}

export const nothingCached: Cached = { value: () => undefined, spill: () => ({ rows: 1, columns: 1 }) };

/** A cell as one edition shows it. */
export interface Shown {
  readonly cell: Cell;
  readonly value?: Outcome;
  readonly formula?: string;
  /** The block that the formula fills. */
  readonly spill?: { readonly rows: number; readonly columns: number };
  /** A value of the day, with no formula behind it. */
  readonly frozen?: true;
  /** The first of a frozen block, where the reader is told so. */
  readonly told?: true;
}

const sayable = (value: Outcome | undefined): Outcome => (value === undefined ? "" : isFault(value) ? value.message : value);

/** Every cell of a sheet as an edition shows it. */
export function shownCells(sheet: Sheet, edition: Edition, cached: Cached, typed = valuesOf([sheet])): Map<string, Shown> {
  const shown = new Map<string, Shown>();
  for (const [at, cell] of sheet.cells) if (!cell.formula) shown.set(at, { cell, value: cell.value });
  // Formulas last: one that spills owns the cells it fills.
  for (const [at, cell] of sheet.cells) {
    if (!cell.formula) continue;
    const [row, column] = ofKey(at);
    const standing = { sheet, row, column, cell, formula: cell.formula };
    const size = cell.spills ? cached.spill(sheet.name, row, column) : { rows: 1, columns: 1 };
    const filled = edition.name === "live" ? spilled(standing, edition, cached, size) : laid(standing, edition, cached, size, typed);
    for (const [down, line] of filled.entries())
      for (const [right, made] of line.entries()) {
        const own = sheet.cells.get(key(row + down, column + right)) ?? cell;
        shown.set(key(row + down, column + right), { ...made, cell: own });
      }
  }
  return shown;
}

interface Standing {
  readonly sheet: Sheet;
  readonly row: number;
  readonly column: number;
  readonly cell: Cell;
  readonly formula: Formula;
}

type Made = Omit<Shown, "cell">;
interface Size {
  readonly rows: number;
  readonly columns: number;
}

const filling = (size: Size, one: (down: number, right: number) => Made): Made[][] =>
  Array.from({ length: size.rows }, (_, down) => Array.from({ length: size.columns }, (_, right) => one(down, right)));

/** With the functions: one formula, and every cell it fills keeps the value it had. */
function spilled({ sheet, row, column, cell, formula }: Standing, edition: Edition, cached: Cached, size: Size): Made[][] {
  const text = written(formula, edition, sheet.name, cell.row)!;
  return filling(size, (down, right) => ({
    value: cached.value(sheet.name, row + down, column + right),
    ...(down || right ? {} : { formula: text, ...(cell.spills ? { spill: size } : {}) }),
  }));
}

/** Without the functions: a formula in each row where there is one, else the value of the day, marked so. */
function laid(standing: Standing, edition: Edition, cached: Cached, size: Size, typed: Typed): Made[][] {
  const { sheet, row, column, cell, formula } = standing;
  return filling(size, (down, right) => {
    const value = cached.value(sheet.name, row + down, column + right);
    const own = cell.spills === "rows" ? down : cell.row;
    const text = right || cell.spills === "block" ? undefined : written(formula, edition, sheet.name, own);
    if (text === undefined) return { value: sayable(value), frozen: true, ...(down || right ? {} : { told: true as const }) };
    const guarded = isFault(value) ? refusing(standing, own, text, value, cached, typed) : unlessBlank(formula, sheet.name, own, text);
    return guarded === undefined ? { value: sayable(value), frozen: true } : { value: sayable(value), formula: guarded };
  });
}

/** Empty where nothing was typed yet, as the functions have it. */
function unlessBlank({ pieces, text: around }: Formula, from: string, row: Row, text: string): string {
  const [asked] = pieces;
  if (pieces.length !== 1 || !isAsk(asked) || around.some(Boolean)) return text;
  const needed = Object.entries(asked.given).flatMap(([name, ref]) =>
    isRef(ref) && name !== "shop" && !asked.contract.args[name].optional ? [ref] : [],
  );
  const down = needed.filter(isColumn);
  const blanks = (down.length ? down : needed).map((ref) => `${refText(ref, from, row)}=""`);
  if (!blanks.length) return text;
  return `IF(${blanks.length > 1 ? `AND(${blanks.join(",")})` : blanks[0]},"",${text})`;
}

type Typed = (ref: Ref) => Outcome | undefined;

/** What was typed into cells, and which of them a formula fills instead. */
export const valuesOf =
  (sheets: readonly Sheet[]): Typed =>
  ({ sheet, row, column }) =>
    sheets.find(({ name }) => name === sheet)?.cells.get(key(row, column))?.value;

/** The cells that a formula reads, each by itself. */
function readCells(formula: Formula, row: Row): Ref[] {
  const all = [...formula.pieces, ...asksIn(formula).flatMap(({ given }) => Object.values(given))].filter(isRef);
  return all.flatMap((ref) => {
    if (isColumn(ref)) return typeof row === "number" ? [refTo(ref.sheet, ref.row + row, ref.column)] : [];
    return ref.rows * ref.columns === 1 ? [ref] : [];
  });
}

/** The words of a refusal for as long as the cells say what was refused, and the formula once they are mended. */
function refusing(
  { sheet, formula }: Standing,
  row: Row,
  text: string,
  { message }: Fault,
  cached: Cached,
  typed: Typed,
): string | undefined {
  const seen = new Map<string, string>();
  for (const ref of readCells(formula, row)) {
    const cell = refText({ ...ref, whole: undefined }, sheet.name, row);
    const set = typed(ref);
    const value = set ?? cached.value(ref.sheet, ref.row, ref.column);
    seen.set(cell, stillSays(cell, value, set !== undefined));
  }
  if (!seen.size) return undefined;
  const still = [...seen.values()];
  return `IF(${still.length > 1 ? `AND(${still.join(",")})` : still[0]},${textLiteral(message)},${text})`;
}

function stillSays(cell: string, value: Outcome | undefined, typed: boolean): string {
  if (isFault(value)) return `ISTEXT(${cell})`;
  if (typeof value !== "number") return `${cell}=${typeof value === "boolean" ? String(value).toUpperCase() : textLiteral(value ?? "")}`;
  return typed || value === 0 ? `${cell}=${value}` : `ABS(${cell}-${value})<${Math.abs(value) * 1e-9}`.replace(/e/g, "E");
}

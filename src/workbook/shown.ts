import { isFault, type Outcome } from "../../shared/outcome";
import type { Cell, Sheet } from "./book";
import type { Cached } from "./cached";
import { asksIn, type Edition, type Formula, isAsk, isRef, written } from "./formula";
import { isCell, isColumn, key, ofKey, type Row, refText } from "./place";
import { stillSaid, type Typed, valuesOf, valueText } from "./still";

/** A cell as one edition shows it. */
export interface Shown {
  readonly cell: Cell;
  readonly value?: Outcome;
  readonly formula?: string;
  /** The block that the formula fills. */
  readonly spill?: { readonly rows: number; readonly columns: number };
  /** Words in place of a number. */
  readonly refused?: true;
  /** A fixed value, with no formula behind it. */
  readonly frozen?: true;
}

/** Shown where a message has no room: wider cells of the row say why. */
export const dash = "–";
const roomy = 19;

const sayable = (value: Outcome | undefined, width: number): Outcome =>
  value === undefined ? "" : isFault(value) ? (width < roomy ? dash : value.message) : value;

/** Every cell of a sheet as an edition shows it. */
export function shownCells(sheet: Sheet, edition: Edition, cached: Cached, typed = valuesOf([sheet])): Map<string, Shown> {
  const shown = new Map<string, Shown>();
  for (const [at, cell] of sheet.cells) if (!cell.formula) shown.set(at, { cell, value: cell.value });
  // Formulas last: a spilling one overwrites the cells that it fills.
  for (const [at, cell] of sheet.cells) {
    if (!cell.formula) continue;
    const [row, column] = ofKey(at);
    const standing = { sheet, row, column, cell, formula: cell.formula };
    const size =
      cell.fills && edition.name === "plain" ? cell.fills : cell.spills ? cached.spill(sheet.name, row, column) : { rows: 1, columns: 1 };
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

/** Replaces a fixed value once its inputs have changed; brief, to fit into columns of numbers. */
export const needsAddIn = "needs add-in";

/**
 * Without the functions: a formula in each row where there is one, else the fixed value for as long as the cells it
 * depends on are unchanged. A refusal is kept the same way; its formula takes over once they are corrected.
 */
function laid(standing: Standing, edition: Edition, cached: Cached, size: Size, typed: Typed): Made[][] {
  const { sheet, row, column, cell, formula } = standing;
  if (cell.without === true) return [[{ value: cached.value(sheet.name, row, column), frozen: true }]];
  if (cell.without !== undefined) return [[{ value: cell.without }]];
  return filling(size, (down, right) => {
    const value = cached.value(sheet.name, row + down, column + right);
    const shown = { value: sayable(value, sheet.widths[column + right]), ...(isFault(value) ? { refused: true as const } : {}) };
    if (cell.spills === "block" && !cell.instead) return { ...shown, frozen: true };
    const own = cell.spills === "rows" ? down : cell.row;
    const instead = cell.instead?.(down, right);
    const text = instead || right === 0 ? written(instead ?? formula, edition, sheet.name, own) : undefined;
    const still = text === undefined || isFault(value) ? stillSaid(formula, edition, sheet.name, own, cached, typed) : undefined;
    if (text === undefined)
      return { ...shown, frozen: true, ...(still ? { formula: `IF(${still},${valueText(shown.value)},"${needsAddIn}")` } : {}) };
    if (isFault(value))
      return still
        ? { ...shown, formula: `IF(${still},${valueText(shown.value)},${sayingSo(formula, text)})` }
        : { ...shown, frozen: true };
    return { ...shown, formula: instead ? sayingSo(instead, text) : unlessBlank(formula, sheet.name, own, sayingSo(formula, text)) };
  });
}

/** A dash where the functions would show an error: the words beside it say why. */
const sayingSo = (formula: Formula, text: string): string => (asksIn(formula).length ? `IFERROR(${text},"${dash}")` : text);

/** Empty where nothing was typed yet, as the functions have it. */
function unlessBlank({ pieces, text: around }: Formula, from: string, row: Row, text: string): string {
  const [asked] = pieces;
  if (pieces.length !== 1 || !isAsk(asked) || around.some(Boolean)) return text;
  const needed = Object.entries(asked.given).flatMap(([name, ref]) =>
    isRef(ref) && name !== "shop" && !asked.contract.args[name].optional && (isColumn(ref) || isCell(ref)) ? [ref] : [],
  );
  const down = needed.filter(isColumn);
  const blanks = (down.length ? down : needed).map((ref) => `${refText(ref, from, row)}=""`);
  if (!blanks.length) return text;
  return `IF(${blanks.length > 1 ? `AND(${blanks.join(",")})` : blanks[0]},"",${text})`;
}

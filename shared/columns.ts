import { type Arg, isBlank, readQuantity } from "./argument";
import * as message from "./message";
import { type Cell, Trouble } from "./outcome";
import type { Unit, Units } from "./unit";

export type Cells = readonly (readonly Cell[])[];

/** One argument of a per-piece call, read down its column. */
export interface Column {
  readonly name: string;
  readonly arg: Arg;
  /** The cells as one list, row by row. */
  readonly lines: Cells;
  /** One cell serves every row. */
  readonly single: boolean;
  /** The rows' values, read in one pass; a row marked odd is read again, cell by cell. */
  readonly values: ArrayLike<unknown>;
}

/** The cell of a column that a row sees. */
export const cellAt = ({ lines, single }: Column, row: number): Cell => lines[single ? 0 : row][0];

export const isSingle = (cells: Cells): boolean => cells.length === 1 && cells[0].length === 1;

export const shapeOf = (cells: Cells) => ({ rows: cells.length, columns: cells[0]?.length ?? 0 });

/** The common shape of all arguments that are no single cell. */
export function commonShape(args: readonly (readonly [label: string, cells: Cells | undefined])[]): { rows: number; columns: number } {
  let shape = { rows: 1, columns: 1 };
  let first = "";
  for (const [label, cells] of args) {
    if (!cells) continue;
    if (isSingle(cells)) continue;
    const own = shapeOf(cells);
    if (first && (own.rows !== shape.rows || own.columns !== shape.columns))
      throw message.heights(first, shape.rows * shape.columns, label, own.rows * own.columns);
    shape = own;
    first ||= label;
  }
  return shape;
}

const omitted: Cells = [[null]];

const isWhole = (cells: Cells): boolean => cells.every((line) => Array.isArray(line) && line.length === cells[0].length);

/** Cells as a rectangle, whatever a caller hands in: one value, one line, lines of several lengths; none at all is nothing given. */
export function squared(given: unknown): Cells | undefined {
  if (given === undefined || given === null) return undefined;
  const lines = Array.isArray(given) ? (given as unknown[]) : [given];
  if (lines.length && Array.isArray(lines[0]) && lines[0].length && isWhole(lines as unknown as Cells)) return lines as unknown as Cells;
  const all = (lines.some(Array.isArray) ? lines.map((line) => (Array.isArray(line) ? line : [line])) : [lines]) as Cell[][];
  const width = all.reduce((most, line) => Math.max(most, line.length), 0);
  return width ? all.map((line) => Array.from({ length: width }, (_, i) => line[i] ?? null)) : undefined;
}

/** A block of several columns is read along its lines. */
const lined = (cells: Cells): Cells => (cells[0].length === 1 ? cells : cells.flatMap((line) => line.map((cell) => [cell])));

/** Reads plain numbers in range and marks every other row odd. */
export function readColumn(name: string, arg: Arg, given: Cells | undefined, units: Units, odd: Uint8Array): Column {
  const lines = lined(given ?? omitted);
  const single = isSingle(lines);
  if (single) return { name, arg, lines, single, values: [] };
  return {
    name,
    arg,
    lines,
    single,
    values: arg.range && arg.kind ? numbers(lines, arg.range, units[arg.kind], odd) : words(arg, lines, units, odd),
  };
}

function numbers(lines: Cells, [least, most]: readonly [number, number], { factor, shift }: Unit, odd: Uint8Array): Float64Array {
  const values = new Float64Array(odd.length);
  for (let row = 0; row < odd.length; row++) {
    const cell = lines[row][0];
    const value = typeof cell === "number" ? (cell + shift) * factor : Number.NaN;
    if (value >= least && value <= most) values[row] = value;
    else odd[row] = 1;
  }
  return values;
}

/** Words repeat down a column, so each is read once. */
function words(arg: Arg, lines: Cells, units: Units, odd: Uint8Array): unknown[] {
  const known = new Map<Cell, unknown>();
  const values: unknown[] = new Array(odd.length);
  for (let row = 0; row < values.length; row++) {
    const cell = lines[row][0];
    if (typeof cell === "string" || typeof cell === "number") {
      if (!known.has(cell)) known.set(cell, readOnce(arg, cell, units));
      values[row] = known.get(cell);
    }
    if (values[row] === undefined) odd[row] = 1;
  }
  return values;
}

function readOnce(arg: Arg, cell: Cell, units: Units): unknown {
  if (isBlank(cell)) return undefined;
  try {
    return arg.read(cell, units);
  } catch (trouble) {
    if (trouble instanceof Trouble) return undefined;
    throw trouble;
  }
}

/** The value of one filled cell, and the unit a weight was typed in. */
export function readCell(cell: Cell, arg: Arg, units: Units): { value: unknown; typedIn?: Unit } {
  const value = arg.read(cell, units);
  if (arg.kind !== "weight" || typeof cell !== "string") return { value };
  return { value, typedIn: readQuantity(cell, arg.label, "weight", 1, units).unit };
}

import { type Arg, isBlank, readQuantity } from "./argument";
import * as message from "./message";
import { type Cell, Trouble } from "./outcome";
import type { Unit, Units } from "./unit";

export type Cells = readonly (readonly Cell[])[];

/** One argument of a per-piece call, read down its column. */
export interface Column {
  readonly name: string;
  readonly arg: Arg;
  readonly cells: Cells;
  /** One cell serves every row. */
  readonly single: boolean;
  /** Values of the rows read at once; a row marked odd is looked at again, cell by cell. */
  readonly values: ArrayLike<unknown>;
}

/** The cell of a column that a row sees. A block of several columns is read along its lines. */
export function cellAt({ cells, single }: Column, row: number): Cell {
  if (single) return cells[0][0];
  const width = cells[0].length;
  return width === 1 ? cells[row][0] : cells[Math.floor(row / width)][row % width];
}

export const shapeOf = (cells: Cells) => ({ rows: cells.length, columns: cells[0]?.length ?? 0 });

/** The common shape of the arguments: every one that is not a single cell has it. */
export function commonShape(args: readonly (readonly [label: string, cells: Cells | undefined])[]): { rows: number; columns: number } {
  let shape = { rows: 1, columns: 1 };
  let first = "";
  for (const [label, cells] of args) {
    if (!cells) continue;
    const own = shapeOf(cells);
    if (own.rows * own.columns === 1) continue;
    if (first && (own.rows !== shape.rows || own.columns !== shape.columns))
      throw message.heights(first, shape.rows * shape.columns, label, own.rows * own.columns);
    shape = own;
    first ||= label;
  }
  return shape;
}

const omitted: Cells = [[null]];

/** Reads plain numbers in range straight away and marks every other row odd. */
export function readColumn(
  name: string,
  arg: Arg,
  given: Cells | undefined,
  units: Units,
  odd: Uint8Array,
  room: () => Float64Array,
): Column {
  const cells = given ?? omitted;
  const single = cells.length === 1 && cells[0].length === 1;
  if (single) return { name, arg, cells, single, values: [] };
  return {
    name,
    arg,
    cells,
    single,
    values: arg.range && arg.kind ? numbers(cells, arg.range, units[arg.kind], odd, room()) : words(arg, cells, units, odd),
  };
}

function numbers(
  cells: Cells,
  [least, most]: readonly [number, number],
  { factor, shift }: Unit,
  odd: Uint8Array,
  values: Float64Array,
): Float64Array {
  const lines = cells[0].length === 1 ? cells : cells.flatMap((line) => line.map((cell) => [cell]));
  for (let row = 0; row < odd.length; row++) {
    const cell = lines[row][0];
    const value = typeof cell === "number" ? (cell + shift) * factor : Number.NaN;
    if (value >= least && value <= most) values[row] = value;
    else odd[row] = 1;
  }
  return values;
}

/** Words repeat down a column: each is read once. */
function words(arg: Arg, cells: Cells, units: Units, odd: Uint8Array): unknown[] {
  const known = new Map<Cell, unknown>();
  const values: unknown[] = new Array(odd.length);
  const width = cells[0].length;
  for (let row = 0; row < values.length; row++) {
    const cell = width === 1 ? cells[row][0] : cells[Math.floor(row / width)][row % width];
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

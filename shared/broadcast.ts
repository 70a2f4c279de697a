import { isEmpty } from "./argument";
import { type Cells, type Column, cellAt, commonShape, readColumn } from "./columns";
import { fromShop, type Given, type Outline, readOne } from "./given";
import { badInput, type Outcome, Trouble } from "./outcome";
import { cellsOf, outgoing, type Result } from "./result";
import { kindOf, type Values, type View, viewOf } from "./rowview";
import type { Shop } from "./settings";
import type { Unit } from "./unit";

/** A per-piece call: every argument is one cell or a column, and each row answers for itself. */
export function eachPiece(outline: Outline, cells: readonly (Cells | undefined)[], shop: Shop): Outcome[][] {
  const { contract } = outline;
  const returns: Result = contract.returns;
  const shape = commonShape(outline.args.map(([, arg], i) => [arg.label, cells[i]]));
  if (returns.form === "row" && shape.columns > 1) throw badInput`${contract.name} fills cells to the right: give the pieces in a column`;
  const length = shape.rows * shape.columns;
  const odd = new Uint8Array(length);
  const columns = outline.args.map(([name, arg], i) => readColumn(name, arg, cells[i], shop.units, odd));
  const singles = setSingles(outline, columns, shop);
  if (!singles) odd.fill(1);

  const answers: Outcome[][] = new Array(length);
  const plain = singles && plainOf(outline, columns, singles, shop);
  const careful = carefulRow(outline, columns, shop);
  for (let row = 0; row < length; row++) {
    if (plain && !odd[row]) row = plainRows(plain, odd, answers, row);
    if (row < length) answers[row] = careful(row);
  }
  if (shape.columns === 1) return answers;
  return Array.from({ length: shape.rows }, (_, r) => answers.slice(r * shape.columns, (r + 1) * shape.columns).map(([only]) => only));
}

interface Singles {
  readonly given: Given;
  /** Unit of a weight that serves every row. */
  readonly typedIn?: Unit;
}

const oneCell = { rows: 1, columns: 1 };

const views = new WeakMap<Outline, Map<string, View>>();

/** The view for a contract and columns of these types, cached. */
function viewFor(outline: Outline, names: readonly string[], values: Values): View {
  const known = views.get(outline) ?? new Map<string, View>();
  views.set(outline, known);
  const kind = kindOf(values);
  const view = known.get(kind) ?? viewOf(names, values);
  known.set(kind, view);
  view.look(values);
  return view;
}

/** A value that serves every row, in the same kind of array as a column: JavaScript engines are fast where all are of one kind. */
const alone = (value: unknown): ArrayLike<unknown> => (typeof value === "number" ? Float64Array.of(value) : [value]);

/** What the fast path needs for rows of plain cells, prepared once for each call. */
interface Plain {
  readonly run: (given: Given) => unknown;
  readonly view: View;
  /** Unit of a result that is one number; undefined for other forms. */
  readonly unit: Unit | undefined;
  readonly cellsOut: (made: unknown) => Outcome[];
}

function plainOf(outline: Outline, columns: readonly Column[], { given, typedIn }: Singles, { units }: Shop): Plain {
  const { contract, settings } = outline;
  const returns: Result = contract.returns;
  const names = [...columns.map(({ name }) => name), ...settings.map(([name]) => name)];
  const values = names.map((name, i) => (columns[i] && !columns[i].single ? columns[i].values : alone(given[name])));
  const kind = returns.form === "cell" && !returns.of.show ? returns.of.kind : undefined;
  return {
    run: contract.run,
    view: viewFor(outline, names, values),
    unit: kind && outgoing(kind, units, typedIn),
    cellsOut: (made) => cellsOf(returns, made, units, oneCell, typedIn)[0],
  };
}

/** The fast path: answers rows of plain numbers from one row on, up to the first that needs the slow path; returns its index. */
function plainRows({ run, view, unit, cellsOut }: Plain, odd: Uint8Array, answers: Outcome[][], from: number): number {
  const { at, given: seen } = view;
  const { factor, shift } = unit ?? { factor: 1, shift: 0 };
  const next = odd.indexOf(1, from);
  const end = next < 0 ? odd.length : next;
  let row = from;
  try {
    if (unit) {
      for (; row < end; row++) {
        at.row = row;
        const value = (run(seen) as number) / factor - shift;
        if (!Number.isFinite(value)) return row;
        answers[row] = [value];
      }
    } else
      for (; row < end; row++) {
        at.row = row;
        answers[row] = cellsOut(run(seen));
      }
  } catch (trouble) {
    if (!(trouble instanceof Trouble)) throw trouble;
  }
  return row;
}

/** The slow path: answers one row cell by cell, with blanks, texts with units and faults. */
function carefulRow(outline: Outline, columns: readonly Column[], shop: Shop): (row: number) => Outcome[] {
  const returns: Result = outline.contract.returns;
  const settings = fromShop(outline, shop);
  const isBlankRow = blankRows(columns, shop);
  return (row) => {
    try {
      if (isBlankRow(row)) return filled(returns, "");
      const { given, typedIn } = readRow(columns, row, settings, shop);
      return cellsOf(returns, outline.contract.run(given), shop.units, oneCell, typedIn)[0];
    } catch (trouble) {
      if (trouble instanceof Trouble) return filled(returns, trouble.in(shop.units));
      throw trouble;
    }
  };
}

/** One outcome in every cell that a row of the answer has. */
const filled = (returns: Result, outcome: Outcome): Outcome[] =>
  returns.form === "row" ? Object.keys(returns.of).map(() => outcome) : [outcome];

/** Values that serve every row, settings included; undefined where one is at fault, so that each row reports it. */
function setSingles(outline: Outline, columns: readonly Column[], shop: Shop): Singles | undefined {
  try {
    return readRow(
      columns.filter((column) => column.single),
      0,
      fromShop(outline, shop),
      shop,
    );
  } catch (trouble) {
    if (trouble instanceof Trouble) return undefined;
    throw trouble;
  }
}

/** Finds empty rows. A constant beside a column is not part of a row: it does not make an empty one half filled. */
function blankRows(columns: readonly Column[], shop: Shop): (index: number) => boolean {
  const required = columns.filter((column) => !column.arg.optional);
  // Without required arguments a row is empty where all its column cells are.
  const down = (required.length ? required : columns).filter((column) => !column.single);
  const own = down.length ? down : required;
  return (index) => own.length > 0 && own.every((column) => isEmpty(cellAt(column, index), column.arg, shop.units));
}

function readRow(columns: readonly Column[], row: number, settings: Given, shop: Shop): Singles {
  const given = { ...settings };
  let typedIn: Unit | undefined;
  for (const column of columns) {
    const read = readOne(cellAt(column, row), column.arg, shop);
    given[column.name] = read.value;
    typedIn ??= read.typedIn;
  }
  return { given, typedIn };
}

import { type Cells, type Column, commonShape, isEmpty, readColumn } from "./columns";
import { fromShop, type Given, type Outline, readOne } from "./given";
import { badInput, type Cell, type Outcome, Trouble } from "./outcome";
import { cellsOf, type Result, shown } from "./result";
import type { Shop } from "./settings";
import type { Unit } from "./unit";

/** A per-piece call: every argument is one cell or a column, and each row answers for itself. */
export function eachPiece(outline: Outline, cells: readonly (Cells | undefined)[], shop: Shop): Outcome[][] {
  const { contract } = outline;
  const { units } = shop;
  const returns: Result = contract.returns;
  const shape = commonShape(outline.args.map(([, arg], i) => [arg.label, cells[i]]));
  if (returns.form === "row" && shape.columns > 1) throw badInput`${contract.name} fills cells to the right: give the pieces in a column`;
  const length = shape.rows * shape.columns;
  const odd = new Uint8Array(length);
  const columns = outline.args.map(([name, arg], i) => readColumn(name, arg, cells[i], units, odd));
  const given = fromShop(outline, shop);
  const shared = setSingles(columns, given, shop);
  if (!shared.whole) odd.fill(1);
  const down = columns.filter((column) => !column.single);
  const isBlankRow = blankRows(columns, shop);

  const answer = (index: number): Outcome[] => {
    try {
      let typedIn = shared.typedIn;
      if (odd[index]) {
        if (isBlankRow(index)) return filled(returns, "");
        typedIn = readRow(columns, index, given, shop);
      } else for (let c = 0; c < down.length; c++) given[down[c].name] = down[c].values[index];
      const made = contract.run(given);
      return returns.form === "cell" ? [shown(returns.of, made, units, typedIn)] : cellsOf(returns, made, units, shape, typedIn)[0];
    } catch (trouble) {
      if (trouble instanceof Trouble) return filled(returns, trouble.in(units));
      throw trouble;
    }
  };

  const answers: Outcome[][] = new Array(length);
  for (let i = 0; i < length; i++) answers[i] = answer(i);
  if (shape.columns === 1) return answers;
  return Array.from({ length: shape.rows }, (_, r) => answers.slice(r * shape.columns, (r + 1) * shape.columns).map(([only]) => only));
}

/** One outcome in every cell that a row of the answer has. */
const filled = (returns: Result, outcome: Outcome): Outcome[] =>
  returns.form === "row" ? Object.keys(returns.of).map(() => outcome) : [outcome];

const cellAt = (column: Column, index: number): Cell => column.cells[column.single ? 0 : index];

/** Values that serve every row are set once; where one is at fault, each row must tell so itself. */
function setSingles(columns: readonly Column[], given: Given, shop: Shop): { whole: boolean; typedIn?: Unit } {
  let typedIn: Unit | undefined;
  try {
    for (const column of columns) {
      if (!column.single) continue;
      const read = readOne(cellAt(column, 0), column.arg, shop);
      given[column.name] = read.value;
      typedIn ??= read.typedIn;
    }
    return { whole: true, typedIn };
  } catch (trouble) {
    if (trouble instanceof Trouble) return { whole: false };
    throw trouble;
  }
}

/** Tells an empty row. A constant beside a column is not part of the row: it does not make an empty row half filled. */
function blankRows(columns: readonly Column[], shop: Shop): (index: number) => boolean {
  const required = columns.filter((column) => !column.arg.optional);
  const down = required.filter((column) => !column.single);
  const own = down.length ? down : required;
  return (index) => own.length > 0 && own.every((column) => isEmpty(cellAt(column, index), column.arg, shop.units));
}

function readRow(columns: readonly Column[], index: number, given: Given, shop: Shop): Unit | undefined {
  let typedIn: Unit | undefined;
  for (const column of columns) {
    const read = readOne(cellAt(column, index), column.arg, shop);
    given[column.name] = read.value;
    typedIn ??= read.typedIn;
  }
  return typedIn;
}

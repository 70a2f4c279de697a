import type { Arg } from "./argument";
import { type Cells, type Column, commonShape, isEmpty, readCell, readColumn, shapeOf } from "./columns";
import { type Contract, parameters } from "./contract";
import * as message from "./message";
import { badInput, type Cell, type Outcome, Trouble } from "./outcome";
import { cellsOf, shown } from "./result";
import type { Setting, Shop } from "./settings";
import { plainUnits, type Unit } from "./unit";

type Given = Record<string, unknown>;
const us = plainUnits("US");
const blank: Cell = null;

const isSetting = (arg: Arg): arg is Setting => "fallback" in arg;

/** What a contract needs at every call, worked out once. */
interface Plan {
  readonly contract: Contract;
  readonly args: readonly (readonly [name: string, arg: Arg])[];
  readonly settings: readonly (readonly [name: string, setting: Setting])[];
}

const plans = new WeakMap<Contract, Plan>();

function planOf(contract: Contract): Plan {
  const known = plans.get(contract);
  if (known) return known;
  const plan = { contract, args: Object.entries<Arg>(contract.args), settings: Object.entries<Setting>(contract.shop ?? {}) };
  plans.set(contract, plan);
  return plan;
}

/**
 * Makes the function that every host calls: a contract and its arguments' cells in, the cells of the answer out.
 * Nothing escapes it: what goes wrong with the input is an error in its cell.
 */
export function caller(readShop: (cells: Cells | undefined) => Shop) {
  return (contract: Contract, cells: readonly (Cells | undefined)[]): Outcome[][] => {
    const plan = planOf(contract);
    try {
      const most = parameters(contract).length;
      if (cells.length > most) throw badInput`${contract.name} takes at most ${most} arguments: ${cells.length} were given`;
      const shop = readShop(contract.shop ? cells[plan.args.length] : undefined);
      return contract.per === "piece" ? eachPiece(plan, cells, shop) : once(plan, cells, shop);
    } catch (trouble) {
      if (trouble instanceof Trouble) return [[trouble.in(us)]];
      throw trouble;
    }
  };
}

/** Settings in force, by the names the contract gives them. */
function fromShop(plan: Plan, shop: Shop): Given {
  const given: Given = {};
  for (const [name, setting] of plan.settings) given[name] = shop.get(setting);
  return given;
}

const absent = (arg: Arg, shop: Shop): unknown => {
  if (isSetting(arg)) return shop.get(arg);
  if (arg.optional) return undefined;
  throw message.missing(arg.label, arg.sample(shop.units));
};

function once(plan: Plan, cells: readonly (Cells | undefined)[], shop: Shop): Outcome[][] {
  const { contract } = plan;
  const given = fromShop(plan, shop);
  let typedIn: Unit | undefined;
  try {
    if (allBlank(plan.args, cells, shop)) return [[""]];
    plan.args.forEach(([name, arg], i) => {
      const own = cells[i];
      const single = own?.[0]?.[0] ?? blank;
      if (!own || (own.length === 1 && own[0].length === 1 && isEmpty(single, arg, shop.units))) given[name] = absent(arg, shop);
      else if (arg.take) given[name] = arg.take(own, shop.units);
      else if (own.length > 1 || own[0].length > 1) throw message.oneCell(arg.label);
      else {
        const read = readCell(single, arg, shop.units);
        given[name] = read.value;
        typedIn ??= read.typedIn;
      }
    });
    const over = contract.returns.form === "spread" ? plan.args.findIndex(([name]) => name === contract.returns.over) : -1;
    const shape = over >= 0 ? shapeOf(cells[over] as Cells) : { rows: 1, columns: 1 };
    return cellsOf(contract.returns, contract.run(given), shop.units, shape, typedIn);
  } catch (trouble) {
    if (trouble instanceof Trouble) return [[trouble.in(shop.units)]];
    throw trouble;
  }
}

const allBlank = (args: readonly (readonly [string, Arg])[], cells: readonly (Cells | undefined)[], shop: Shop): boolean => {
  const required = args.flatMap(([, arg], i) => (arg.optional ? [] : [[arg, cells[i]] as const]));
  if (!required.length || required.some(([, own]) => own === undefined)) return false;
  return required.every(([arg, own]) => own?.every((line) => line.every((cell) => isEmpty(cell, arg, shop.units))));
};

function eachPiece(plan: Plan, cells: readonly (Cells | undefined)[], shop: Shop): Outcome[][] {
  const { contract } = plan;
  const { units } = shop;
  const shape = commonShape(plan.args.map(([, arg], i) => [arg.label, cells[i]]));
  const { returns } = contract;
  if (returns.form === "row" && shape.columns > 1) throw badInput`${contract.name} fills cells to the right: give the pieces in a column`;
  const length = shape.rows * shape.columns;
  const odd = new Uint8Array(length);
  const read = plan.args.map(([name, arg], i) => readColumn(name, arg, cells[i], units, odd));
  const row = rowReader(read, shop, length > 1);
  const given = fromShop(plan, shop);

  // Values that serve every row are set once; one that is at fault makes every row look at itself.
  const down: Column[] = [];
  for (const column of read) {
    if (!column.single) down.push(column);
    else if (!row.set(column, 0, given)) odd.fill(1);
  }

  const answer = (index: number): Outcome[] => {
    let typedIn: Unit | undefined;
    try {
      if (odd[index]) {
        if (row.isBlank(index)) return returns.form === "row" ? Object.keys(returns.of).map(() => "") : [""];
        typedIn = row.readAll(index, given);
      } else for (let c = 0; c < down.length; c++) given[down[c].name] = down[c].values[index];
      typedIn ??= row.typedIn;
      const made = contract.run(given);
      return returns.form === "cell" ? [shown(returns.of, made, units, typedIn)] : cellsOf(returns, made, units, shape, typedIn)[0];
    } catch (trouble) {
      if (!(trouble instanceof Trouble)) throw trouble;
      const fault = trouble.in(units);
      return returns.form === "row" ? Object.keys(returns.of).map(() => fault) : [fault];
    }
  };

  const answers: Outcome[][] = new Array(length);
  for (let i = 0; i < length; i++) answers[i] = answer(i);
  if (shape.columns === 1) return answers;
  return Array.from({ length: shape.rows }, (_, r) => answers.slice(r * shape.columns, (r + 1) * shape.columns).map(([only]) => only));
}

/** Looks at single cells: blanks, texts with units, faults. */
function rowReader(columns: readonly Column[], shop: Shop, many: boolean) {
  const cellAt = (column: Column, index: number): Cell => column.cells[column.single ? 0 : index];
  const required = columns.filter((column) => !column.arg.optional);
  // A constant beside a column is not part of the row: it does not make an empty row half filled.
  const own = many && required.some((column) => !column.single) ? required.filter((column) => !column.single) : required;

  const reader = {
    typedIn: undefined as Unit | undefined,

    isBlank: (index: number): boolean => own.length > 0 && own.every((column) => isEmpty(cellAt(column, index), column.arg, shop.units)),

    readAll(index: number, given: Given): Unit | undefined {
      let typedIn: Unit | undefined;
      for (const column of columns) {
        const cell = cellAt(column, index);
        if (isEmpty(cell, column.arg, shop.units)) given[column.name] = absent(column.arg, shop);
        else {
          const read = readCell(cell, column.arg, shop.units);
          given[column.name] = read.value;
          typedIn ??= read.typedIn;
        }
      }
      return typedIn;
    },

    /** Sets one value for all rows; false where it must be told row by row. */
    set(column: Column, index: number, given: Given): boolean {
      try {
        const cell = cellAt(column, index);
        if (isEmpty(cell, column.arg, shop.units)) given[column.name] = absent(column.arg, shop);
        else {
          const read = readCell(cell, column.arg, shop.units);
          given[column.name] = read.value;
          reader.typedIn ??= read.typedIn;
        }
        return true;
      } catch (trouble) {
        if (trouble instanceof Trouble) return false;
        throw trouble;
      }
    },
  };
  return reader;
}

import type * as OSpreadsheet from "@odoo/o-spreadsheet";

export type Engine = Pick<typeof OSpreadsheet, "registries">;

/** What the formulas of a workbook may take while it opens, and what one formula may fill at any time. */
export const allowance = { milliseconds: 20_000, results: 5_000_000, largest: 1_000_000 };

type Value = { readonly value: unknown };
type Argument = Value | Value[][] | null | undefined;
type Compute = (this: unknown, ...args: Argument[]) => unknown;
interface Description {
  compute: Compute;
  readonly args: readonly { readonly acceptMatrix?: boolean }[];
}

const tooLarge = { value: "#NUM!", message: "This would fill more than a million cells. Ask for fewer." };
const spent = { value: "#NUM!", message: "The formulas of this workbook take too long: this one was not calculated." };

interface Budget {
  readonly end: number;
  results: number;
  over: boolean;
}
let budget: Budget | undefined;
let calls = 0;

/** Does some work within the allowance, and tells whether formulas asked for more: those that came too late then show an error. */
export function budgeted<T>(work: () => T): { readonly result: T; readonly over: boolean } {
  const own: Budget = { end: performance.now() + allowance.milliseconds, results: 0, over: false };
  budget = own;
  try {
    return { result: work(), over: own.over };
  } finally {
    budget = undefined;
  }
}

/** Does some work within the allowance that is running, or within one of its own. */
export const allowed = <T>(work: () => T): T => (budget ? work() : budgeted(work).result);

const columnsOf = (one: Argument): number => (Array.isArray(one) ? one.length : 1);
const rowsOf = (one: Argument): number => (Array.isArray(one) ? (one[0]?.length ?? 0) : 1);
const most = (args: readonly Argument[], sizeOf: (one: Argument) => number) => args.reduce((size, one) => Math.max(size, sizeOf(one)), 1);
const sum = (args: readonly Argument[], sizeOf: (one: Argument) => number) => args.reduce((size, one) => size + sizeOf(one), 0);
const number = (one: Argument, otherwise: number): number => {
  const { value } = (Array.isArray(one) ? one[0]?.[0] : one) ?? { value: undefined };
  return value === undefined || value === null || value === "" ? otherwise : Number(value);
};

const each = (args: readonly Argument[]) => most(args, columnsOf) * most(args, rowsOf);
const rowsByColumns = (rows: Argument, columns: Argument) => number(rows, 1) * number(columns, 1);

/** How many cells a function is about to make, where that does not follow from the cells handed in. */
const made: Readonly<Record<string, (args: readonly Argument[]) => number>> = {
  SEQUENCE: ([rows, columns]) => rowsByColumns(rows, columns),
  RANDARRAY: ([rows, columns]) => rowsByColumns(rows, columns),
  MUNIT: ([size]) => number(size, 1) ** 2,
  EXPAND: ([from, rows, columns]) => number(rows, rowsOf(from)) * number(columns, columnsOf(from)),
  WRAPROWS: ([, count]) => number(count, 1),
  WRAPCOLS: ([, count]) => number(count, 1),
  OFFSET: ([from, , , height, width]) => number(height, rowsOf(from)) * number(width, columnsOf(from)),
  MMULT: ([left, right]) => rowsOf(left) * columnsOf(right),
  HSTACK: (args) => sum(args, columnsOf) * most(args, rowsOf),
  VSTACK: (args) => sum(args, rowsOf) * most(args, columnsOf),
  IF: each,
  IFS: each,
  IFERROR: each,
  IFNA: each,
};

/** Throws what an error cell holds, where the allowance is used up. */
function spend(cells: number): void {
  if (!budget) return;
  budget.results += cells;
  // The clock is read only now and then: that takes longer than most calls.
  if (cells > 1_000 || ++calls % 256 === 0) budget.over ||= performance.now() > budget.end;
  budget.over ||= budget.results > allowance.results;
  if (budget.over) throw spent;
}

/** Makes every function of the engine ask first how large its answer becomes, and keep to the allowance while a workbook opens. */
export function guard({ registries: { functionRegistry } }: Engine): void {
  const { mapping } = functionRegistry as unknown as { mapping: Record<string, Compute> };
  for (const [name, description] of Object.entries(functionRegistry.content as unknown as Record<string, Description>)) {
    const { compute, args: definitions } = description;
    description.compute = function (...args) {
      if ((made[name]?.(args) ?? 0) > allowance.largest) return tooLarge;
      spend(sum(args, columnsOf) > args.length ? 1_001 : 0);
      const answer = compute.apply(this, args);
      if (Array.isArray(answer)) spend(columnsOf(answer) * rowsOf(answer));
      return answer;
    };
    const whole = mapping[name];
    const isSpread = (_: Argument, i: number) => !definitions[Math.min(i, definitions.length - 1)]?.acceptMatrix;
    mapping[name] = function (...args) {
      return each(args.filter(isSpread)) > allowance.largest ? tooLarge : whole.apply(this, args);
    };
  }
}

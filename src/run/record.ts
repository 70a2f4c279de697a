import type { Block } from "../../shared/host";
import { columnName } from "../workbook/place";
import { hour, serialOf } from "./hours";
import { kindOf } from "./kinds";
import { unitsOf } from "./lines";
import { countIn, type Run, type Step } from "./schema";
import { type Mixing, mixingOf } from "./stock";

type Cell = Block["cells"][number][number];

/** What the workbook has to write into, as typed; what is missing there is not written. */
export interface Book {
  /** The heading of the Run Log and its rows. */
  readonly log?: Block;
  /** The rows of the Resin Book: date, added, dye added, taken up. */
  readonly resin?: Block;
  /** The cost lines of the Price Tag: item, quantity, price, unit. */
  readonly costs?: Block;
  readonly pieces?: Block;
  readonly spoiled?: Block;
}

/** One thing that will be written: where, and in words. */
export interface Entry {
  readonly sheet: string;
  readonly words: readonly string[];
}

export interface Writing {
  readonly blocks: readonly Block[];
  readonly entries: readonly Entry[];
  /** Why something is not written. */
  readonly missing: readonly string[];
}

const isBlank = (cell: Cell | undefined): boolean => cell === undefined || cell === null || cell === "";

/** "'Run Log'!A9:N38", from 0. */
function origin(at: string): { readonly sheet: string; readonly row: number; readonly column: number } {
  const found = /^(.*)!\$?([A-Z]+)\$?(\d+)/.exec(at);
  if (!found) throw new Error(`${at} is no address`);
  const [, sheet, letters, row] = found;
  const column = [...letters].reduce((sum, letter) => sum * 26 + letter.charCodeAt(0) - 64, 0) - 1;
  return { sheet, row: Number(row) - 1, column };
}

function rowAt({ at, cells }: Block, row: number, written: readonly Cell[]): Block {
  const { sheet, row: top, column } = origin(at);
  const [first, last] = [columnName(column), columnName(column + (cells[0]?.length ?? 1) - 1)];
  const filled = (cells[0] ?? []).map((_, i) => written[i] ?? null);
  return { at: `${sheet}!${first}${top + row + 1}:${last}${top + row + 1}`, cells: [filled] };
}

const freeRows = ({ cells }: Block, from = 0): number[] => cells.flatMap((row, i) => (i >= from && row.every(isBlank) ? [i] : []));

/** Rows after the last filled one come first: a ledger is read in turn. */
function nextRows(block: Block, from = 0): number[] {
  const last = block.cells.findLastIndex((row, i) => i >= from && !row.every(isBlank));
  return freeRows(block, from).filter((row) => row > last);
}

const rounded = (value: number, figures = 4): number => Number(value.toPrecision(figures));
const fact = ({ facts }: Run, name: string): number | undefined => (typeof facts[name] === "number" ? (facts[name] as number) : undefined);
const loadsOf = (run: Run): number[] => run.loads.map((_, i) => i + 1);
const stepFor = ({ steps }: Run, kind: Step["kind"], load: number): Step | undefined =>
  steps.find((step) => step.kind === kind && step.loads.includes(load));
const spent = (step: Step | undefined): number | undefined =>
  step?.started !== undefined && step.done !== undefined ? step.done - step.started : undefined;

/** Resin that left with a load: by its weights where there are two, else as worked out. */
function takenBy(run: Run, load: number): { readonly amount: number; readonly weighed: boolean } | undefined {
  const [before, drained] = [run.entries[`before ${load}`], run.entries[`drained ${load}`]];
  const density = fact(run, "resin density") ?? 1.03;
  const grams = { g: 1, kg: 1000, oz: 28.349523125, lb: 453.59237 }[unitsOf(run).weight] ?? 1;
  if (before !== undefined && drained !== undefined && drained >= before)
    return { amount: ((drained - before) * grams) / density / (run.system === "US" ? 946.352946 : 1000), weighed: true };
  const uptake = fact(run, `uptake ${load}`);
  return uptake === undefined ? undefined : { amount: uptake + (fact(run, `drips ${load}`) ?? 0), weighed: false };
}

/** The moment that the run is dated by: its first loading. */
const dated = (run: Run): number => {
  const load = run.steps.find(({ kind }) => kind === "load");
  return load?.started ?? load?.done ?? run.origin;
};

const woodOf = (run: Run, load: number): string =>
  [...new Set(run.loads[load - 1].pieces.map(({ wood, name }) => wood || name))].join(", ");

/** One line of the Run Log, by the titles of its columns. */
function logLine(run: Run, load: number): Readonly<Record<string, Cell>> {
  const entry = (name: string) => run.entries[`${name} ${load}`] ?? null;
  const vacuum = stepFor(run, "vacuum", load);
  const bubbled = spent(vacuum);
  const soak = spent(stepFor(run, "soak", load));
  const gauge = Math.max(0, ...run.readings.filter(({ step }) => step === vacuum?.id).map((reading) => reading.gauge));
  const spoiled = entry("spoiled");
  const known = (name: string, figures = 4): Cell => {
    const value = fact(run, name);
    return value === undefined ? null : rounded(value, figures);
  };
  const [mixed, dyed] = [run.entries.mixed, run.entries.dyed];
  return {
    date: Math.floor(serialOf(dated(run), run.offset)),
    wood: woodOf(run, load),
    pieces: countIn(run, load),
    dry: entry("before"),
    drained: entry("drained"),
    cured: entry("cured"),
    volume: known(`volume ${load}`),
    gravity: known(`gravity ${load}`, 3),
    gauge: gauge > 0 ? gauge : null,
    bubbled: bubbled === undefined ? null : Math.round(bubbled / 60_000),
    soak: soak === undefined ? null : rounded(soak / hour, 3),
    dye: run.color === "clear" ? 0 : mixed && dyed !== undefined ? rounded(dyed / mixed, 3) : known("dye rate"),
    oven: known("oven"),
    result: `${run.color ? `${run.color}; ` : ""}${run.name}${spoiled ? `; ${spoiled} spoiled` : ""}`,
  };
}

/** Titles that the sheet may give its columns. */
const titles: Readonly<Record<string, RegExp>> = {
  date: /^date/,
  wood: /^wood/,
  pieces: /^pieces/,
  dry: /^(oven-)?dry/,
  drained: /^drained/,
  cured: /^cured/,
  volume: /^volume/,
  gravity: /gravity/,
  gauge: /^gauge/,
  bubbled: /^bubble/,
  soak: /^soak/,
  dye: /^dye/,
  oven: /^oven(?!-dry)/,
  result: /^(result|notes)/,
};

function logRows(run: Run, log: Block): Writing {
  const heads = log.cells[0].map((title) => String(title).toLowerCase());
  const free = nextRows(log, 1);
  if (free.length < run.loads.length) return { blocks: [], entries: [], missing: ["The Run Log is full: insert rows at its end first."] };
  const lines = loadsOf(run).map((load) => logLine(run, load));
  const blocks = lines.map((line, i) =>
    rowAt(
      log,
      free[i],
      heads.map((title) => {
        const name = Object.keys(titles).find((one) => titles[one].test(title));
        return name ? (line[name] ?? null) : null;
      }),
    ),
  );
  const words = lines.map((line) => {
    const weights = [line.dry, line.drained, line.cured].map((weight) => weight ?? "not weighed").join(", ");
    return `${line.pieces} ${line.wood}: dry, drained, cured ${weights}${line.bubbled === null ? "" : `; vacuum ${line.bubbled} min`}${line.soak === null ? "" : `, soak ${line.soak} h`}`;
  });
  const mixedWoods = loadsOf(run).some((load) => woodOf(run, load).includes(", "));
  const missing = mixedWoods ? ["Woods weighed together do not tell how full each one gets: weigh each wood by itself for that."] : [];
  return { blocks, entries: [{ sheet: "Run Log", words }], missing };
}

const mixed = (run: Run): Mixing => mixingOf(run, dated(run));

function resinRow(run: Run, resin: Block): Writing {
  const { mix, dye, isFresh } = mixed(run);
  const rows = nextRows(resin);
  const old = isFresh ? rows.shift() : undefined;
  const [row] = rows;
  if (row === undefined) return { blocks: [], entries: [], missing: ["The Resin Book is full: insert rows at its end first."] };
  const taken = loadsOf(run).map((load) => takenBy(run, load));
  if (taken.some((one) => one === undefined))
    return {
      blocks: [],
      entries: [],
      missing: [
        "Without weights nobody knows how much resin this run took, so nothing goes into the Resin Book. Next time weigh the pieces dry and drained.",
      ],
    };
  const amount = rounded(
    taken.reduce((sum, one) => sum + one!.amount, 0),
    3,
  );
  const added = rounded(run.entries.mixed ?? mix ?? 0);
  const dyed = run.color === "clear" ? 0 : rounded(run.entries.dyed ?? dye ?? 0);
  const day = Math.floor(serialOf(dated(run), run.offset));
  const { fluid, powder } = unitsOf(run);
  const how = taken.every((one) => one!.weighed) ? "by weight" : "as worked out, not weighed";
  return {
    blocks: [
      ...(old === undefined ? [] : [rowAt(resin, old, [day, null, null, "emptied"])]),
      rowAt(resin, row, [day, added, dyed, amount]),
    ],
    entries: [
      {
        sheet: "Resin Book",
        words: [
          ...(old === undefined ? [] : ["the resin that had expired: emptied. Dispose of it, and do not pour it back"]),
          `${added} ${fluid} mixed with ${dyed} ${powder} of dye; ${amount} ${fluid} taken up, ${how}`,
        ],
      },
    ],
    missing: [],
  };
}

/** Hours that somebody was at it. */
function benchHours({ steps }: Run): number {
  const spans = steps.flatMap(({ kind, started, done }) =>
    !kindOf(kind).alone && started !== undefined && done !== undefined ? [[started, done] as const] : [],
  );
  let [sum, until] = [0, 0];
  for (const [from, to] of spans.sort((a, b) => a[0] - b[0])) {
    sum += Math.max(0, to - Math.max(from, until));
    until = Math.max(until, to);
  }
  return sum / hour;
}

function priceRows(run: Run, { costs, pieces, spoiled }: Book): Writing {
  const count = loadsOf(run).reduce((sum, load) => sum + countIn(run, load), 0);
  const lost = loadsOf(run).reduce((sum, load) => sum + (run.entries[`spoiled ${load}`] ?? 0), 0);
  const blocks: Block[] = [];
  const words: string[] = [];
  if (pieces) {
    blocks.push({ at: pieces.at, cells: [[count]] });
    words.push(`${count} pieces in the run`);
  }
  if (spoiled) {
    blocks.push({ at: spoiled.at, cells: [[lost]] });
    words.push(`${lost} spoiled`);
  }
  const missing: string[] = [];
  if (costs) {
    const { fluid } = unitsOf(run);
    const taken = loadsOf(run).map((load) => takenBy(run, load)?.amount ?? 0);
    const wanted: [item: RegExp, name: string, quantity: number, unit: string][] = [
      [
        /^resin/,
        "resin",
        rounded(
          taken.reduce((sum, one) => sum + one, 0),
          3,
        ),
        fluid,
      ],
      [/^catalyst/, "catalyst", mixed(run).packets ?? 0, "packets"],
      [/^dye/, "dye", rounded(run.color === "clear" ? 0 : (run.entries.dyed ?? mixed(run).dye ?? 0)), unitsOf(run).powder],
      [/^(blanks|pieces)/, "blanks", count, "pieces"],
      [/^(hours|your time|time)/, "hours at the bench", rounded(benchHours(run), 3), "h"],
    ];
    const free = freeRows(costs);
    for (const [item, name, quantity, unit] of wanted) {
      const own = costs.cells.findIndex(([first]) => item.test(String(first).toLowerCase()));
      const row = own >= 0 ? own : free.shift();
      if (row === undefined) missing.push(`The Price Tag has no line left for ${name}.`);
      else blocks.push(rowAt(costs, row, own >= 0 ? [null, quantity] : [name, quantity, null, unit]));
      if (row !== undefined) words.push(`${name}: ${quantity} ${unit}`);
    }
  }
  return { blocks, entries: words.length ? [{ sheet: "Price Tag", words }] : [], missing };
}

/** All that a run writes into the workbook, as it stands. */
export function recordOf(run: Run, book: Book): Writing {
  const none = (sheet: string): Writing => ({
    blocks: [],
    entries: [],
    missing: [`This workbook has no ${sheet} of the template: insert it under Workbook.`],
  });
  const parts = [
    book.log ? logRows(run, book.log) : none("Run Log"),
    book.resin ? resinRow(run, book.resin) : none("Resin Book"),
    book.costs || book.pieces ? priceRows(run, book) : none("Price Tag"),
  ];
  return {
    blocks: parts.flatMap(({ blocks }) => blocks),
    entries: parts.flatMap(({ entries }) => entries),
    missing: parts.flatMap(({ missing }) => missing),
  };
}

/** Cells that hold something else by now than what was written there. */
export function changedSince(after: readonly Block[], now: readonly (Block | undefined)[]): string[] {
  const same = (a: Cell, b: Cell | undefined) =>
    a === b || (typeof a === "number" && typeof b === "number" && Math.abs(a - b) < 1e-9 * Math.max(1, Math.abs(a)));
  return after.flatMap(({ at, cells }, i) =>
    cells.some((row, r) => row.some((cell, c) => cell !== null && !same(cell, now[i]?.cells[r]?.[c] ?? ""))) ? [at.replace(/'/g, "")] : [],
  );
}

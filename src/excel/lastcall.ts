import type { Call } from "../../shared/host";
import { type Cell, isFault, type Outcome } from "../../shared/outcome";
import { calledIn, isOneCall } from "../calls";

/** Most cells remembered, calls of one cell, and values held in all of them. */
const limits = { cells: 400, calls: 8, values: 400_000 };

interface Made {
  readonly call: Call;
  /** The calculation that it was made in. */
  readonly pass: number;
}

interface Kept {
  readonly made: readonly Made[];
  readonly values: number;
}

const sizeOf = ({ cells, answer }: Call): number =>
  cells.reduce((sum, block) => sum + (block ? block.length * (block[0]?.length ?? 0) : 0), answer.length * (answer[0]?.length ?? 0));

/** "'My Shop'!$B$4", "[Book1]My Shop!B4" and "My Shop!b4" are one cell. */
export function plainAddress(address: string): string {
  const cut = address.lastIndexOf("!");
  const sheet = address
    .slice(0, cut)
    .replace(/^'|'$/g, "")
    .replace(/''/g, "'")
    .replace(/^\[[^\]]*\]/, "");
  const cell = address
    .slice(cut + 1)
    .replace(/\$/g, "")
    .split(":")[0]
    .toUpperCase();
  return `${sheet.toLowerCase()}!${cell}`;
}

const isBlock = (block: Call["cells"][number], answer: Call["answer"]): boolean =>
  block !== undefined &&
  block.length === answer.length &&
  block.every((line, r) => line.length === answer[r].length && line.every((cell, c) => same(cell, answer[r][c])));

/**
 * The calls of the newest calculation, and of older ones those whose answers went into them: Excel works out a call within a call
 * in a calculation of its own. A branch that is not taken any more is of an older one too, and went into nothing.
 */
function standing(made: readonly Made[]): Made[] {
  const kept: Made[] = [];
  const pass = made.at(-1)?.pass;
  for (const one of [...made].reverse()) {
    const fed = kept.some(({ call }) => call.cells.some((block) => isBlock(block, one.call.answer)));
    if (one.pass === pass || fed) kept.unshift(one);
  }
  return kept;
}

const same = (shown: Cell, recorded: Outcome | undefined): boolean => {
  if (isFault(recorded)) return (isFault(shown) ? shown.error : shown) === recorded.error;
  if (typeof shown === "number" && typeof recorded === "number")
    return Math.abs(shown - recorded) <= 1e-9 * Math.max(Math.abs(shown), Math.abs(recorded));
  return shown === recorded || ((shown ?? "") === "" && recorded === "");
};

/**
 * What cells were last asked and what they answered, by address. A spreadsheet recalculates only what changed, moves cells
 * without a word and calls functions for its previews too: so this forgets early, and what it cannot vouch for it does not tell.
 */
export class LastCalls {
  private readonly kept = new Map<string, Kept>();
  private pass = 0;
  private values = 0;

  constructor(private readonly most = limits) {}

  record(address: string, call: Call): void {
    const key = plainAddress(address);
    const made = [...(this.kept.get(key)?.made ?? []), { call, pass: this.pass }].slice(-this.most.calls);
    const values = made.reduce((sum, one) => sum + sizeOf(one.call), 0);
    this.drop(key);
    // The newest come last, and the oldest go first.
    this.kept.set(key, { made, values });
    this.values += values;
    for (const oldest of this.kept.keys()) {
      if (this.kept.size <= this.most.cells && this.values <= this.most.values) break;
      this.drop(oldest);
    }
  }

  /** A calculation is over: what a cell is asked from here on stands in place of what it was asked before. */
  settle(): void {
    this.pass++;
  }

  /** Rows moved, a sheet was sorted or renamed: no address can be trusted any more. */
  clear(): void {
    this.kept.clear();
    this.values = 0;
  }

  /** The calls that explain a cell which holds this formula and shows this value; undefined where they may be stale. */
  at(address: string, formula: string, shown: Cell): readonly Call[] | undefined {
    const names = calledIn(formula);
    const kept = this.kept.get(plainAddress(address));
    if (!kept || !names.length) return undefined;
    const newest: Call[] = [];
    for (const { call } of standing(kept.made).reverse()) {
      const at = names.indexOf(call.name);
      if (at < 0) continue;
      names.splice(at, 1);
      newest.unshift(call);
    }
    if (!newest.length) return undefined;
    return isOneCall(formula) && !same(shown, newest[0].answer[0]?.[0]) ? undefined : newest;
  }

  private drop(key: string): void {
    const old = this.kept.get(key);
    if (!old) return;
    this.values -= old.values;
    this.kept.delete(key);
  }
}

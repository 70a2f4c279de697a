import type { Call } from "../../shared/host";
import { type Cell, isFault, type Outcome } from "../../shared/outcome";
import { calledIn, isOneCall } from "../calls";

/** Cells remembered, calls of one cell, and values held in all of them: enough to explain, never a burden. */
const limits = { cells: 400, calls: 8, values: 400_000 };

interface Kept {
  calls: Call[];
  /** The calculation that it was made in. */
  pass: number;
  values: number;
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
    const old = this.kept.get(key);
    const calls = old?.pass === this.pass ? [...old.calls, call].slice(-this.most.calls) : [call];
    const values = calls.reduce((sum, one) => sum + sizeOf(one), 0);
    this.drop(key);
    // The newest come last, and the oldest go first.
    this.kept.set(key, { calls, pass: this.pass, values });
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
    for (const call of [...kept.calls].reverse()) {
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

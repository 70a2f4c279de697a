import type { Block } from "../../../shared/host";
import { hour } from "../hours";
import { countIn, type Run } from "../schema";
import { kindOf } from "../stepkinds";
import { unitsOf } from "../steplines";
import { loadsOf, mixed, rounded, takenBy } from "./amounts";
import { freeRows, rowAt } from "./freerows";
import type { Book, Writing } from "./writing";

/** Hours of attended work. */
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

export function priceRows(run: Run, { costs, pieces, spoiled }: Book): Writing {
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

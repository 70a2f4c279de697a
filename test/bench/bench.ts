import { cpus } from "node:os";
import { gzipSync } from "node:zlib";
import { atStart, bundled, bundles } from "../../tool/bundle";
import budget from "./budget.json";
import { packed } from "./packing";
import { bought, growth, type Planned, planned } from "./planning";
import { times } from "./ratios";
import { screens } from "./screens";

/** `npm run bench`: what a function costs beside the loop a person would write by hand, and what Excel has to load, and the times that a person feels. */

export interface Figure {
  readonly what: string;
  readonly value: number;
  readonly most: number;
  readonly unit: string;
  /** Milliseconds of ours and of the bare loop. */
  readonly times?: readonly [ours: number, bare: number];
}

/** A column of ten thousand rows through each per-piece function, and beside it through the loop that a person would write. */
async function columns(): Promise<Figure[]> {
  const most: Readonly<Record<string, number>> = budget["milliseconds a column"];
  return (await times()).map(({ name, ours, bare }) => ({
    what: name,
    value: ours,
    most: most[name] ?? most.others,
    unit: "ms a column",
    times: [ours, bare],
  }));
}

async function size(what: (typeof bundles)[number]): Promise<Figure> {
  const loaded = atStart(await bundled(what), what).map((bytes) => gzipSync(bytes, { level: 9 }).length);
  return { what, value: loaded.reduce((sum, bytes) => sum + bytes, 0) / 1000, most: budget["gzip kB"][what], unit: "kB gzip" };
}

/** PLAN at a thousand, ten thousand and a hundred thousand pieces, as growth over n log n. */
function growths(found: readonly Planned[]): Figure[] {
  return found.slice(1).map((large, i) => ({
    what: `PLAN ${large.pieces}`,
    value: growth(found[i], large),
    most: budget["at most times n log n"].PLAN,
    unit: `times n log n from ${found[i].pieces} pieces`,
    times: [large.ms, found[i].ms],
  }));
}

/** Times that are felt, each beside what it may be. */
function felt(found: Readonly<Record<string, number>>): Figure[] {
  const most: Readonly<Record<string, number>> = budget.milliseconds;
  return Object.entries(found).map(([what, value]) => ({ what, value, most: most[what], unit: "ms" }));
}

/** Plans beside bounds that none can pass: 1 would be as good as can be. */
function bounds(): Figure[] {
  const most: Readonly<Record<string, number>> = budget["at most times the bound"];
  return Object.entries(packed()).map(([what, value]) => ({ what, value, most: most[what], unit: "times the bound" }));
}

const short = (n: number) => n.toPrecision(3);

function line({ what, value, most, unit, times }: Figure): string {
  const beside = times ? `  ${short(times[0])} ms beside ${short(times[1])} ms` : "";
  return `${value > most ? "over " : "     "}${what.padEnd(22)}${value.toFixed(2).padStart(8)} of ${String(most).padStart(3)} ${unit}${beside}`;
}

async function main(): Promise<void> {
  const plans = planned();
  const seen = await screens();
  const figures = [
    ...(await Promise.all(bundles.map(size))),
    ...(await columns()),
    ...growths(plans),
    ...bounds(),
    ...felt({ "PLAN of 10,000 pieces": plans[1].ms, "WHATTOBUY of 6 sizes": bought(), ...seen }),
  ];
  if (!seen) console.error("Page and pane were not measured: no Chrome, Chromium or Edge was found.");
  const machine = `Node ${process.version}, ${process.platform} ${process.arch}, ${cpus().length} x ${cpus()[0]?.model ?? "unknown"}`;
  const over = figures.filter(({ value, most }) => value > most).map(({ what }) => what);
  if (process.argv.includes("--json")) console.log(JSON.stringify({ machine, rows: budget.rows, figures, over }));
  else {
    console.log(figures.map(line).join("\n"));
    console.log(`${budget.rows} rows a call; best medians. ${machine}`);
    console.log(over.length ? `Over budget: ${over.join(", ")}` : "All within budget.");
  }
  process.exitCode = over.length ? 1 : 0;
}

main();

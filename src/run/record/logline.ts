import type { Block } from "../../../shared/host";
import { hour, serialOf } from "../hours";
import { countIn, type Run } from "../schema";
import { dated, fact, loadsOf, rounded, spent, stepFor } from "./amounts";
import { nextRows, rowAt } from "./freerows";
import type { Cell, Writing } from "./writing";

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

export function logRows(run: Run, log: Block): Writing {
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

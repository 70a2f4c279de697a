import { spawnSync } from "node:child_process";
import { join } from "node:path";

interface Report {
  readonly figures: readonly { readonly what: string; readonly value: number; readonly most: number; readonly unit: string }[];
}

/** Ratios of two loops of a fifth of a millisecond lie up to a third apart between runs, most of all on a shared machine. */
const noise = 4 / 3;

const root = join(__dirname, "..", "..");

function bench(): Report {
  const { stdout } = spawnSync(join(root, "node_modules/.bin/tsx"), ["test/bench/bench.ts", "--json"], { cwd: root, encoding: "utf8" });
  return JSON.parse(stdout);
}

const over = ({ figures }: Report): string[] =>
  figures.filter(({ value, most, unit }) => value > (unit.startsWith("times") ? most * noise : most)).map(({ what }) => what);

describe("the budget", () => {
  it("holds for every ratio and size; a second look where another program got in the way", () => {
    const first = bench();
    expect(first.figures.length).toBeGreaterThan(20);
    const missed = over(first);
    if (!missed.length) return;
    const again = over(bench());
    expect(missed.filter((what) => again.includes(what))).toEqual([]);
  });
});

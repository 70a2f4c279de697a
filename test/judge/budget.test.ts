import { gzipSync } from "node:zlib";
import { isFault } from "../../shared/outcome";
import { call, catalogue } from "../../src/catalogue";
import { atStart } from "../../tool/bundle";
import { columnsOf } from "../bench/border";
import budget from "../bench/budget.json";
import { tokensOf } from "../bench/planning";
import { built, paneScripts } from "../built";

/** What can be told without a watch; how long things take is the bench's to say, on a machine that does nothing else. */
describe("the budget", () => {
  it.each([
    ["functions.js", [built("functions.js")]],
    ["taskpane.js", atStart(paneScripts(), "taskpane.js")],
  ] as const)("of %s, gzipped, holds", (name, scripts) => {
    const size = scripts.reduce((sum, bytes) => sum + gzipSync(bytes, { level: 9 }).length, 0);
    expect(size / 1000).toBeLessThan(budget["gzip kB"][name]);
  });

  it.each(catalogue.filter(({ per }) => per === "piece"))("is measured where $name answers every row", (contract) => {
    const answers = call(contract, columnsOf(contract, budget.rows) as never);
    expect(answers).toHaveLength(budget.rows);
    expect(answers.flat().filter(isFault)).toEqual([]);
  });

  it("is measured where PLAN plans ten thousand pieces", () => {
    const plan = catalogue.find(({ name }) => name === "PLAN")!;
    expect(call(plan, [tokensOf(10_000), [[10]], [[14]], [["2026-03-14 08:00"]]]).length).toBeGreaterThan(3);
  });
});

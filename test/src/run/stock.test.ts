import { problemsOf } from "../../../src/run/problems";
import { finish } from "../../../src/run/progress";
import { recordOf } from "../../../src/run/record/record";
import { type Run, stepOf } from "../../../src/run/schema";
import { linesOf } from "../../../src/run/steplines";
import { mixingOf } from "../../../src/run/stock";
import { ask } from "../../ask";
import { within } from "../../within";
import { made, telling } from "./run";

const day = 24 * 3_600_000;
/** The run is on Saturday, 14 March 2026; mixed resin is good for three months. */
const holding = (mixedOn?: string): Run =>
  made({
    shop: [...made().shop, ["resin on hand", 3.6], ["resin dye rate", 0.25], ["resin mixed on", mixedOn]].filter(
      (row): row is [string, string | number] => row[1] !== undefined,
    ),
  });
const mixSaid = (run: Run, now = run.origin) => linesOf(run, stepOf(run, "mix"), now).say.join(" ");
const mixProblems = (run: Run, now = run.origin) => problemsOf(run, stepOf(run, "mix"), now, telling).join(" ");

it("uses what is on hand while it is good", () => {
  const run = holding("2026-02-01");
  expect(mixSaid(run)).toMatch(
    /^Nothing to mix: what is on hand is enough\. The 3\.6 qt on hand goes in first\. Dye, blue: none to add\.$/,
  );
  expect(mixProblems(run)).toBe("");
});

it.each([
  ["2025-12-10", /^The 3\.6 qt on hand expired after 2026-03-10\. Do not use it/],
  ["2025-12-13", /^The 3\.6 qt on hand expired after 2026-03-13\. Do not use it/],
])("leaves out resin mixed on %s: it mixes as if there were none, and says what to do", (mixedOn, words) => {
  const run = holding(mixedOn);
  const none = made();
  expect(mixSaid(run)).toMatch(/^Mix [\d.]+ qt of fresh resin\. \d packets? of catalyst/);
  expect(mixSaid(run)).not.toMatch(/on hand/);
  expect(mixProblems(run)).toMatch(words);
  const { mix, packets, dye } = mixingOf(run, run.origin);
  within(mix!, mixingOf(none, none.origin).mix!, 1e-9);
  expect(packets).toBe(mixingOf(none, none.origin).packets);
  within(dye!, ask("DYE", mix) as number, 1e-9);
});

it("leaves out resin that expires before the run is over, and not what lasts through its last day", () => {
  const run = holding("2025-12-15");
  expect(mixProblems(run)).toBe("");
  expect(mixProblems(run, run.begins.at + 20 * 3_600_000)).toMatch(/expires after 2026-03-15, before this run is over/);
  expect(mixingOf(run, run.begins.at + 20 * 3_600_000).isFresh).toBe(true);
});

it("stays by what was judged when the resin was mixed", () => {
  let run = holding("2025-12-15");
  for (const id of ["choose", "safety", "mix"]) run = finish(run, id, run.origin);
  expect(mixingOf(run, run.origin + 30 * day)).toMatchObject({ isFresh: false, mix: 0 });
});

it("asks for a date where there is none, and finds one that lies ahead", () => {
  expect(mixProblems(holding())).toMatch(/^The 3\.6 qt on hand has no date on My Shop/);
  expect(mixProblems(holding("2026-04-01"))).toMatch(/dated after this run/);
  expect(mixProblems(made())).toBe("");
});

it("empties the Resin Book of what had expired before it writes what was mixed", () => {
  const resin = { at: "'Resin Book'!A12:D20", cells: Array.from({ length: 9 }, () => ["", "", "", ""]) };
  const rows = (run: Run) =>
    recordOf(run, { resin })
      .blocks.filter(({ at }) => at.includes("Resin"))
      .map(({ cells }) => cells[0]);
  const [emptied, mixed] = rows(holding("2025-12-10"));
  expect(emptied).toEqual([46095, null, null, "emptied"]);
  within(mixed[1] as number, mixingOf(made(), made().origin).mix!, 1e-3);
  expect(rows(holding("2026-02-01"))).toHaveLength(1);
});

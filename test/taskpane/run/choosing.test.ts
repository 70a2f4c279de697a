import { answers } from "../../../src/run/answers";
import { blankRow, choiceOf, type Draft, firstDraft, withLoads } from "../../../taskpane/run/choosing";
import type { Sources } from "../../../taskpane/sources";

const sizes = { thickness: 0.75, width: 0.75, length: 5, count: 20 };
const sources: Sources = {
  shop: [["units", "US"]],
  system: "US",
  ...{ chamber: 6, height: 10, pumpRate: undefined },
  blanks: [
    { name: "elder", wood: "boxelder", ...sizes, color: "blue" },
    { name: "maple", wood: "red maple", ...sizes, color: "Blue " },
    { name: "ash", wood: "white ash", ...sizes, color: "red" },
    { name: "plain", wood: "white ash", ...sizes, color: "" },
    { name: "wet", wood: "white ash", ...sizes, color: "blue", problem: "dry it first" },
  ],
  today: { loads: [], demo: undefined, color: "" },
};
const pick = (...names: string[]) => names.map((name) => ({ ...blankRow, pick: name, count: "2" }));
const draft = (...loads: string[][]): Draft =>
  withLoads(
    firstDraft(sources),
    loads.map((names) => pick(...names)),
    sources,
  );
const chosen = (one: Draft) => choiceOf(one, sources, answers, 0);

it("takes pieces of one color, however it is typed", () => {
  expect(chosen(draft(["elder", "maple"], ["elder"]))).toMatchObject({ color: "blue", loads: [{ pieces: [{}, {}] }, { pieces: [{}] }] });
});

it.each([
  [[["elder", "ash"]], "run-0-1-pick", "Blanks has red for these and blue for elder."],
  [[["elder"], ["ash"]], "run-1-0-pick", "Blanks has red for these and blue for elder."],
  [[["ash"], ["ash", "plain"]], "run-1-1-pick", "Blanks has no color for these and red for ash."],
])("refuses two colors in one run at the very row: %j", (loads, field, words) => {
  expect(chosen(draft(...loads))).toEqual({ field, words: `${words} One run takes one color of resin: run them one after the other.` });
});

it("refuses a row that Blanks has a problem with, in its words", () =>
  expect(chosen(draft(["wet"]))).toEqual({ field: "run-0-0-pick", words: "Blanks says of these: dry it first." }));

it("lets a typed piece go with any color", () => {
  const typed = { ...blankRow, wood: "white ash", sizes: ["1", "1", "4"] as const };
  const both = withLoads(draft(["elder"]), [[...pick("elder"), typed]], sources);
  expect(chosen(both)).toMatchObject({ color: "blue" });
});

it("brings the color of other pieces along, unless one was typed", () => {
  const first = draft(["elder"]);
  expect(first.color).toBe("blue");
  expect(withLoads(first, [pick("ash")], sources).color).toBe("red");
  expect(withLoads({ ...first, color: "green" }, [pick("ash")], sources).color).toBe("green");
});

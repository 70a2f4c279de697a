import { kindNames, kindOf } from "../../../../src/run/stepkinds";
import { near } from "../../../within";
import { filled } from "../filled";

const today = filled("Today");
const number = (label: string) => today.beside(label) as number;
const note = 6;

/** The same four pieces in further loads. */
const withLoads = (count: number) => {
  const typed = [2, 3]
    .slice(0, count - 1)
    .map((load) => [`@${today.rows(`Load ${load}: pieces`)[0] + 2}`, { 0: "spalted boxelder", 1: 4 }]);
  return filled("Today", { Today: Object.fromEntries(typed) });
};

it("loads at the demo, and has each step after the one before", () => {
  const from = (kind: (typeof kindNames)[number], label = "from") => {
    const top = today.rows(`${kindNames.indexOf(kind) + 1}. ${kindOf(kind).title}`)[0];
    const row = today.rows(label).find((one) => one > top)!;
    return today.value(row, 1) as number;
  };
  const begin = number("day and hour");
  const times = (["choose", "safety", "mix", "load", "vacuum", "air", "drain", "bake", "cool"] as const).map((kind) => from(kind));
  expect(times).toEqual([...times].sort((a, b) => a - b));
  near(from("load"), begin, 1e-9);
  near(from("air"), begin + 4.5 / 24, 1e-9);
  near(from("soak", "until, at least"), begin + 12.5 / 24, 1e-9);
});

it("says that a start has passed, and that the hours are not kept", () => {
  const begin = number("day and hour");
  const gone = filled("Today", { Today: { "it is now": begin } });
  expect(gone.beside("from", note)).toMatch(/^this start has passed/);
  const late = filled("Today", { Today: { "day and hour": begin + 5 / 24 } });
  expect(late.texts.length).toBeGreaterThan(0);
  const words = (which: typeof late) =>
    [...which.sheet.cells.keys()].map((at) => which.value(...(at.split(",").map(Number) as [number, number])));
  expect(words(late).some((value) => typeof value === "string" && /vacuum must not be left alone/.test(value))).toBe(true);
  expect(words(today).some((value) => typeof value === "string" && /vacuum must not be left alone/.test(value))).toBe(false);
});

it.each([2, 3])("counts back for %i loads: load 1 cool, load 2 of three ready for the oven, one after another", (count) => {
  const run = withLoads(count);
  const begin = run.beside("day and hour") as number;
  const at = (title: string, label: string, load: number) => {
    const row = run.rows(label).find((one) => one > run.rows(title)[0])!;
    return run.value(row, load) as number;
  };
  expect(run.beside("loads")).toBe(count);
  near(at("4. Load with ballast", "from", count), begin, 1e-9);
  expect(at("10. Cool", "cool by", 1)).toBeLessThanOrEqual(begin + 1e-9);
  if (count === 3) expect(at("8. Drain and wrap", "from", 2) + number("drain and wrap") / 24).toBeLessThanOrEqual(begin + 1e-9);
  for (let load = 1; load < count; load++) {
    expect(at("4. Load with ballast", "from", load + 1)).toBeGreaterThanOrEqual(at("8. Drain and wrap", "from", load) - 1e-9);
    expect(at("8. Drain and wrap", "from", load)).toBeGreaterThanOrEqual(at("7. Soak", "until, at least", load) - 1e-9);
  }
});

it("begins at once where it is to start now", () => {
  const run = filled("Today", { Today: { "this run:": "the run starts at" } });
  near(run.beside("from") as number, run.beside("day and hour") as number, 1e-9);
});

it("draws the run over its hours, each part as long as the times say", () => {
  const [chart] = today.sheet.charts;
  const row = today.rows("Hours from the first load on")[0] + 2;
  const hours = [1, 2, 3, 4, 5, 6].map((column) => today.value(row, column) as number);
  expect(hours[0]).toBe(0);
  const done = ((today.beside("cool by") as number) - (today.rows("from").map((at) => today.value(at, 1)) as number[])[3]) * 24;
  near(
    hours.reduce((a, b) => a + b),
    done,
    1e-6,
  );
  expect(chart.series.map(({ values }) => values.row)).toEqual(chart.series.map(() => row));
  expect(chart.alt).toMatch(/vacuum.*soaking.*oven/);
});

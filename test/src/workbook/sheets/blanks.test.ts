import { ask, spill } from "../../../ask";
import { near } from "../../../within";
import { filled } from "../filled";

const inFoil = [
  ["in the oven", "foil"],
  ["fullness", 0.55],
];
const blanks = filled("Blanks");
const first = (title: string) => blanks.under(title, 1)[0];

it("works out of a row what the functions say of it", () => {
  const { beside } = blanks;
  const [thickness, width, length, weight, dry] = [2, 3, 4, 7, 8].map((column) => beside("spalted boxelder", column) as number);
  const volume = thickness * width * length;
  const gravity = ask("PIECEGRAVITY", dry, volume, undefined, [["scale reads", "g"]] as never);
  const moisture = ask("MOISTURE", weight, dry);
  near(first("wood, each"), volume);
  near(first("gravity"), gravity as number);
  near(first("moisture"), moisture as number);
  near(first("voids"), ask("VOIDS", gravity as never, moisture as never) as number);
  // The demo's Run Log has three runs of boxelder: their mean, and their own spread.
  near(first("fullness"), (0.57 + 0.53 + 0.56) / 3, 1e-3);
  const taken = ask("UPTAKE", volume, gravity as never, first("fullness") as never, moisture as never) as number;
  near(first("resin, each"), taken);
  const spread = first("spread") as number;
  expect(spread).toBeGreaterThan(0.1);
  expect(spread).toBeLessThan(0.15);
  expect(first("likely")).toBe(`${(taken * (1 - spread)).toFixed(3)} to ${(taken * (1 + spread)).toFixed(3)}`);
  const by = (end: string) => Math.round(ask("BAKE", thickness, width, length, gravity as never, [...inFoil, ["bake by", end]]) as number);
  expect(first("bake")).toBe(`about ${by("middle")} min, likely ${by("short end")} to ${by("long end")}`);
  expect([first("grade"), beside("spalted boxelder", 21)]).toEqual(
    spill("SUITABILITY", gravity as never, thickness, moisture as never, "spalted")[0],
  );
});

it.each([
  ["P-017", "lighter than when dry: weigh again"],
  ["P-024", "no such wood on the sheet Woods"],
  ["P-063", "too wet to take resin: dry it first"],
  ["spalted boxelder", ""],
])("says of %s what is wrong with it: “%s”", (kind, words) => expect(blanks.beside(kind, 18)).toBe(words));

it.each([
  [{ 8: undefined }, "oven-dry is missing: weigh it dry"],
  [{ 5: undefined }, "the wood is missing: pick one"],
  [{ 8: 0 }, "oven-dry is missing: weigh it dry"],
  [{ 2: 4, 3: 4 }, "weight and sizes fit no wood: check"],
  [{ 2: 3, 3: 3, 4: 9, 7: undefined, 8: undefined }, "too thick to bake by calculation"],
  [{ 2: 1.9, 3: 5.8, 4: 5.5, 7: undefined, 8: undefined }, "larger than the tub"],
  [{ 7: undefined, 8: undefined }, ""],
])("explains a row with %j: “%s”", (changed, words) =>
  expect(filled("Blanks", { Blanks: { "spalted boxelder": changed } }).beside("spalted boxelder", 18)).toBe(words),
);

it.each([
  ["8 x 5 in", 4.4, ""],
  ["8 x 5", 4.4, ""],
  ["4 x 3 in", 5.5, "larger than the tub"],
  ["20 x 2", 5.5, "larger than the tub"],
  ["20 x 12 cm", 4.4, ""],
  ["10 x 8 cm", 4.4, "larger than the tub"],
  ["200 mm by 5 in", 4.4, ""],
  ["100 mm × 3 in", 4.4, "larger than the tub"],
  ['8 1/2" x 4 1/4"', 4.4, ""],
  ["3-1/2 x 2½ in", 4.4, "larger than the tub"],
  ["14 cm", 4.4, ""],
  ["6 cm", 4.4, "larger than the tub"],
  ["0.5 ft", 4.4, ""],
])("knows whether a piece 2 by 2.5 in goes into a tub of %s", (tub, length, words) => {
  const row = { 2: 2, 3: 2.5, 4: length, 7: undefined, 8: undefined };
  const made = filled("Blanks", { Blanks: { "spalted boxelder": row }, "My Shop": { tub, "tub height": 7, thickest: 3 } });
  expect(made.beside("spalted boxelder", 18)).toBe(words);
  const [planned] = spill("PLAN", [["a", 1, 2, 2.5, length, 0.4]], 40, 10, "", undefined, [
    ["tub", tub],
    ["tub height", 7],
    ["thickest", 3],
  ]).slice(1);
  expect(typeof planned[0] === "number").toBe(words === "");
});

it("says so where a tub in other words is not checked", () => {
  const told = (tub: string | number) => String(filled("Blanks", { "My Shop": { tub } }).value(8, 0));
  expect(told("8 centimeters x 5 centimeters")).toMatch(/^The tub on My Shop cannot be read here.*8 x 5 in\.$/);
  expect(["8 x 5 cm", 6, ""].map(told)).toEqual(["", "", ""]);
});

it.each(["Maple, silver", "SILVER-MAPLE", "silver  maple", "maple silver"])("takes “%s” for silver maple, as GRAVITY does", (wood) => {
  const typed = filled("Blanks", { Blanks: { "spalted boxelder": { 5: wood, 7: undefined, 8: undefined } } });
  expect(typed.beside("spalted boxelder", 18)).toBe("");
  near(typed.under("gravity", 1)[0], ask("GRAVITY", "silver maple") as number);
  // The demo's Run Log has one run of it.
  near(typed.under("fullness", 1)[0], 0.61, 1e-3);
});

it("hands the plan each piece's own gravity, color and its wood's own fullness", () => {
  const row = Array.from({ length: 8 }, (_, i) => blanks.value(blanks.rows("spalted boxelder")[0], 31 + i));
  expect(row.slice(0, 2)).toEqual(["spalted boxelder", blanks.beside("spalted boxelder", 1)]);
  near(row[5], first("gravity") as number, 1e-5);
  expect(row[6]).toBe("blue");
  near(row[7], first("fullness") as number, 1e-5);
});

it("counts pieces, resin, and what is left out of the plan", () => {
  expect(["pieces", "in the plan", "left out, rows", "left out, pieces"].map((label) => blanks.beside(label))).toEqual([100, 97, 3, 3]);
  near(
    blanks.beside("resin taken up"),
    blanks.under("resin, all", 14).reduce<number>((sum, one) => sum + (Number(one) || 0), 0),
  );
});

it("leaves out of the plan by itself what is wet, unsuited, faulty or without a count", () => {
  const { beside } = filled("Blanks", {
    Blanks: {
      "spalted boxelder": { 7: 24 },
      "sound black cherry": { 7: 52, 8: 51.5 },
      "punky silver maple": { 2: 0.5, 3: 2, 4: 13, 7: undefined, 8: undefined },
      "sound sweetgum": { 1: undefined },
    },
  });
  const told = (kind: string) => [beside(kind, 19), beside(kind, 32)];
  expect(told("spalted boxelder")).toEqual(["left out", 0]);
  expect(told("sound black cherry")).toEqual(["left out: unsuited", 0]);
  expect(told("punky silver maple")).toEqual(["left out", 0]);
  expect(told("sound sweetgum")).toEqual(["no count", 0]);
  expect(told("spalted hackberry")).toEqual(["yes", 8]);
});

it("offers the woods and the states as lists, and marks what is wet or wrong", () => {
  const types = blanks.validations.map(({ type, range }) => `${type} ${range[0]}`);
  expect(types).toEqual(expect.arrayContaining(["list F", "list G", "custom C", "custom B"]));
  expect(new Set(blanks.sheet.alerts.map(({ as }) => as))).toEqual(new Set(["bad", "attention", "good"]));
});

it("keeps all but the reason within a screen 1280 pixels wide", () =>
  expect(7 * blanks.sheet.widths.slice(0, 19).reduce((a, b) => a + b)).toBeLessThan(1230));

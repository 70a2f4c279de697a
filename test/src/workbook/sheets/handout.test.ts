import type { Working } from "../../../../shared/working";
import { explain } from "../../../../src/catalogue";
import { bake } from "../../../../src/cure/bake";
import { styleOf } from "../../../../src/workbook/looks";
import { ask } from "../../../ask";
import { near } from "../../../within";
import { filled } from "../filled";

const lying = (way: string) => [
  ["in the oven", way],
  ["fullness", 0.55],
];
const us = filled("Handout");
type Sight = ReturnType<typeof filled>;

/** What column A says, in the words of one look. */
const said = ({ sheet, value }: Sight, look: string) =>
  [...sheet.cells].flatMap(([at, cell]) => {
    const [row, column] = at.split(",").map(Number);
    return cell.look === look && cell.formula && column === 0 ? [String(value(row, column))] : [];
  });
const note = (sight: Sight) => said(sight, "bigNote")[0];
const set = (typing: Record<string, string | number>, system: "US" | "SI" = "US") => filled("Handout", { "My Shop": typing }, system);

it("bakes bare and in foil by thickness, and dyes by volume, as the functions do", () => {
  (us.under("thick, in", 8) as number[]).forEach((thickness, i) => {
    near(us.under("bare, min", 8)[i], ask("BAKE", thickness, undefined, 5, undefined, lying("spaced")) as number);
    near(us.under("foil, min", 8)[i], ask("BAKE", thickness, undefined, 5, undefined, lying("foil")) as number);
  });
  expect([us.under("bare, min", 5)[4], us.under("foil, min", 5)[4]].map((minutes) => Math.round(minutes as number))).toEqual([47, 62]);
  (us.under("resin, qt", 8) as number[]).forEach((fluid, i) => {
    near(us.under("dye, tsp", 8)[i], ask("DYE", fluid) as number);
  });
  expect(us.under("in spoons", 3)).toEqual(["1/8 tsp", "1/4 tsp", "1/4 tsp + 1/8 tsp"]);
});

it.each([
  ["spaced", 47, 62, "5. Drain, stand bare and apart, bake"],
  ["foil", 47, 62, "5. Drain, wrap each in foil, bake"],
  ["fan", 35, 62, "5. Drain, stand bare and apart, fan on, bake"],
])("with pieces %s, 1 in takes %i min bare and %i in foil, and a step says “%s”", (way, bare, foil, step) => {
  const sight = set({ "in the oven": way });
  expect(["bare, min", "foil, min"].map((title) => Math.round(sight.under(title, 5)[4] as number))).toEqual([bare, foil]);
  expect(said(sight, "big").filter((words) => words.startsWith(step))).toHaveLength(1);
});

it("a surface coefficient of the shop's own counts in the column of its own way", () => {
  const sight = set({ "in the oven": "foil", "oven surface coefficient": 5 });
  const own = [...lying("foil"), ["oven surface coefficient", 5]];
  near(sight.under("foil, min", 5)[4], ask("BAKE", 1, undefined, 5, undefined, own) as number);
  near(sight.under("bare, min", 5)[4], us.under("bare, min", 5)[4] as number);
});

it("is one page, in big type", () => {
  expect(us.sheet.print.pages).toBe(1);
  const sizes = [...us.sheet.cells.values()].map(({ look, format }) => styleOf(look, format).font?.size ?? 0);
  expect(Math.min(...sizes.filter(Boolean))).toBeGreaterThanOrEqual(14);
});

it("says under which oven its minutes hold, and of which wood, in the units of the file", () => {
  expect(note(us)).toMatch(
    /5 in long, specific gravity 0\.4, from 70 °F to 190 °F in the middle, oven at 200 °F.*Above 1 1\/4 in it is more than/,
  );
  expect(note(filled("Handout", {}, "SI"))).toMatch(/125 mm long.*88 °C in the middle, oven at 93 °C.*Above 30 mm/);
});

it("says how much longer it may take, and that covers what BAKE itself owns up to", () => {
  expect(note(us)).toMatch(/up to 80 % longer/);
  for (const way of ["spaced", "foil"])
    for (const thickness of [0.875, 1, 1.25, 1.5, 2]) {
      const shop = lying(way);
      const [[, told]] = (explain(bake, [[[thickness]], undefined, [[5]], undefined, shop]) as Working).answer;
      const most = Number(/likely \d+ to (\d+)$/.exec(told)![1]);
      expect(most / (ask("BAKE", thickness, undefined, 5, undefined, shop) as number)).toBeLessThan(1.8);
    }
});

it.each([
  ["US", "SI"],
  ["SI", "US"],
] as const)("a file in %s whose shop says %s gives no number, and says why", (system, other) => {
  const sight = set({ units: other }, system);
  for (const title of ["bare, min", "foil, min", sight.texts.find((text) => text.startsWith("dye, "))!])
    expect(sight.under(title, 8).every((one) => one === "")).toBe(true);
  expect(note(sight)).toMatch(`this file is made for ${system}`);
});

it("says where to look when there are no minutes", () => {
  expect(note(us)).not.toMatch("no minutes");
  for (const [name, value] of [
    ["core", 205],
    ["thickest", 1.5],
  ] as const)
    expect(note(set({ [name]: value }))).toMatch(/^Where minutes are missing, check oven, core/);
});

it("dries at a temperature, and warns of what hurts", () => {
  expect(said(us, "big")[0]).toMatch("in the oven at 215 to 220 °F until");
  expect(said(filled("Handout", {}, "SI"), "big")[0]).toMatch("at 103 °C until");
  const warnings = said(us, "bigCaution").join(" ");
  for (const words of [
    "pump outdoors",
    "rated for vacuum",
    "No flame near",
    "run hot",
    "warm wood sets",
    "about 3 months",
    "never stored under vacuum",
    "Wet wood steams",
  ])
    expect(warnings).toMatch(words);
});

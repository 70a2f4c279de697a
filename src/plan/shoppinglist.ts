import { define } from "../../shared/contract";
import { measure, unitName, type Words } from "../../shared/measure";
import { type Said, said } from "../../shared/outcome";
import { table } from "../../shared/result";
import type { Kind } from "../../shared/unittable";
import { text } from "../../shared/words";
import { isTrouble } from "./attempt";
import { suffixOf } from "./color";
import { resinsIn } from "./colors";
import { type Given, planArgs, planShop } from "./given";
import { chamberSeconds, momentOf } from "./plancells";
import { type ColorStock, type Plan, planOf } from "./planned";

const line = (name: string, kind: Kind, value: number) => ({
  name,
  quantity: said(kind, value) as Said | string,
  unit: kind as Kind | Words,
});

/** Most rows whose reason is told; the rest are counted. */
const mostTold = 3;

/** Why rows are not planned, in one cell: a printed sheet does not show the messages of errors. */
function whyNot({ unplanned }: Plan): Kind | Words {
  if (!unplanned.length) return "count";
  return (units) => {
    const told = unplanned.slice(0, mostTold).map(({ label, trouble }) => `${label}: ${trouble.in(units).message}`);
    const rest = unplanned.length - told.length;
    return [...told, ...(rest ? [`and ${rest} more`] : [])].join("; ");
  };
}

const sum = <T>(all: readonly T[], of: (one: T) => number): number => all.reduce((total, one) => total + of(one), 0);

/** The amount of one line for one color. */
type OfColor = (stock: ColorStock) => number;

/** A line for all, or one for each color where there are several. */
function perColor({ colors }: Plan, name: string, kind: Kind, of: OfColor, none = 0) {
  if (colors.length < 2) return [line(name, kind, colors.length ? of(colors[0]) : none)];
  return colors.map((color) => line(name + suffixOf(color.name), kind, of(color)));
}

const mixed: OfColor = ({ entries }) => sum(entries, (entry) => entry.mixed);
const packets: OfColor = ({ entries }) => sum(entries, (entry) => entry.packets);
const dyed: OfColor = ({ entries }) => sum(entries, ({ dye }) => (isTrouble(dye) ? 0 : dye));

function listOf(made: Plan, given: Given) {
  const { loads } = made;
  const foil = given.inTheOven === "foil" ? given.foilAllowance * sum(loads, ({ faces }) => faces) : 0;
  const ready = made.done === undefined ? "" : momentOf(made, made.done);
  return [
    ...perColor(made, "resin to mix", "fluid", mixed),
    ...perColor(made, "packets", "count", packets),
    ...perColor(made, "dye", "powder", dyed),
    line("foil", "foil", foil),
    line(
      "ballast of the heaviest load",
      "weight",
      loads.reduce((most, { ballast }) => Math.max(most, ballast), 0),
    ),
    line("loads", "count", loads.length),
    line("pulls", "count", made.pulls),
    line("chamber hours", "hours", chamberSeconds(made, given.vacuumHours)),
    line(
      "oven hours",
      "hours",
      sum(loads, ({ batches }) => sum(batches, (bake) => bake)),
    ),
    line("days", "count", made.days),
    ...perColor(
      made,
      "resin left",
      "fluid",
      ({ left }) => left,
      sum<{ volume: number }>(resinsIn(given) ?? [{ volume: given.resinOnHand }], ({ volume }) => volume),
    ),
    ...perColor(made, "resin discarded", "fluid", ({ discarded }) => discarded),
    { name: "earliest ready", quantity: typeof ready === "number" ? said("date", ready) : ready, unit: "date" as Kind },
    { ...line("not planned", "count", made.unplanned.length), unit: whyNot(made) },
  ];
}

/** What a plan takes, all loads together. */
export const shoppinglist = define({
  name: "SHOPPINGLIST",
  per: "call",
  asks: "What do I need for the whole plan?",
  args: planArgs,
  shop: planShop,
  returns: table({ name: text("name", "packets"), quantity: measure("quantity", 4), unit: unitName("unit", "qt") }, false),
  format: { name: "General", quantity: "0.00", unit: "General" },
  equation:
    "the sums of PLAN's columns; foil = {foilAllowance} × the pieces' six faces; chamber hours = the vacuum of each pull, or in to out where the chamber holds the resin itself; oven hours = sum of batches × bake; days = from the first loading to the last done, both counted; earliest ready = the last done; beside not planned stands why",
  source: "the shop's own rules: common practice, no source",
  accuracy: "agrees with PLAN exactly; dye leaves out the loads whose resin is too strong already",
  cautions: ["chamber", "ballast", "resin", "storage", "oven"],
  worked: {
    typed: [[["maple", 12, 0.75, 0.75, 5, 0.45]], 6, 10, "2026-03-14 08:00"],
    gives: [
      ["resin to mix", 2, "qt"],
      ["packets", 2, ""],
      ["dye", 0.5, "tsp"],
      ["foil", 2.015625, "ft²"],
      ["ballast of the heaviest load", 19.5359126, "oz"],
      ["loads", 1, ""],
      ["pulls", 1, ""],
      ["chamber hours", 23.5, "h"],
      ["oven hours", 0.776905191, "h"],
      ["days", 2, ""],
      ["resin left", 1.73862159, "qt"],
      ["resin discarded", 0, "qt"],
      ["earliest ready", 46096.3948710494, ""],
      ["not planned", 0, ""],
    ],
  },
  run: (given) => listOf(planOf(given), given),
});

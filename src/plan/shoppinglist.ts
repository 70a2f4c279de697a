import { define } from "../../shared/contract";
import { measure, unitName } from "../../shared/measure";
import { said } from "../../shared/outcome";
import { table } from "../../shared/result";
import type { Kind } from "../../shared/unittable";
import { text } from "../../shared/words";
import { isTrouble } from "./attempt";
import { type Given, planArgs, planShop } from "./given";
import { facesOf, type Planned, planned } from "./planned";

const line = (name: string, kind: Kind, value: number) => ({ name, quantity: said(kind, value), unit: kind });

const sum = (loads: readonly Planned[], of: (load: Planned) => number): number => loads.reduce((all, load) => all + of(load), 0);

const foilOf = (loads: readonly Planned[], { inTheOven, foilAllowance }: Given): number =>
  inTheOven === "foil" ? foilAllowance * sum(loads, ({ size, count }) => facesOf(size.piece) * count) : 0;

/** What a plan takes, all loads together. */
export const shoppinglist = define({
  name: "SHOPPINGLIST",
  per: "call",
  asks: "What do I need for all of it?",
  args: planArgs,
  shop: planShop,
  returns: table({ name: text("name", "packets"), quantity: measure("quantity", 4), unit: unitName("unit", "qt") }, false),
  format: { name: "General", quantity: "0.00", unit: "General" },
  equation:
    "the sums of PLAN's columns; foil = {foilAllowance} × the pieces' six faces; chamber hours = sum of out − in; oven hours = sum of batches × bake",
  source: "the shop's own rules: common practice, no source",
  accuracy: "agrees with PLAN exactly; dye leaves out the loads whose fluid is too strong already",
  cautions: ["chamber", "ballast", "resin", "storage", "oven"],
  worked: {
    typed: [[["maple", 12, 0.75, 0.75, 5, 0.45]], 6, 10, "2026-03-14 08:00"],
    gives: [
      ["fluid to mix", 2, "qt"],
      ["packets", 2, ""],
      ["dye", 0.5, "tsp"],
      ["foil", 2.015625, "ft²"],
      ["ballast of the heaviest load", 19.5359126, "oz"],
      ["loads", 1, ""],
      ["chamber hours", 23.5, "h"],
      ["oven hours", 0.776905191, "h"],
      ["fluid left", 1.73862159, "qt"],
      ["not planned", 0, ""],
    ],
  },
  run: (given) => {
    const { loads, unplanned, left } = planned(given);
    return [
      line(
        "fluid to mix",
        "fluid",
        sum(loads, ({ mixed }) => mixed),
      ),
      line(
        "packets",
        "count",
        sum(loads, ({ packets }) => packets),
      ),
      line(
        "dye",
        "powder",
        sum(loads, ({ dye }) => (isTrouble(dye) ? 0 : dye)),
      ),
      line("foil", "foil", foilOf(loads, given)),
      line(
        "ballast of the heaviest load",
        "weight",
        loads.reduce((most, { arrangement }) => Math.max(most, arrangement.ballast), 0),
      ),
      line("loads", "count", loads.length),
      line(
        "chamber hours",
        "hours",
        sum(loads, ({ inChamber }) => inChamber),
      ),
      line(
        "oven hours",
        "hours",
        sum(loads, ({ batches, size }) => batches * size.bake),
      ),
      line("fluid left", "fluid", left),
      line("not planned", "count", unplanned.length),
    ];
  },
});

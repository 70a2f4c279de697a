import { bake } from "../../cure/bake";
import { dye } from "../../resin/dye";
import { spoons } from "../../resin/spoons";
import { ask, formula } from "../formula";
import type { Kit } from "../kit";
import { Page } from "../page";
import type { Shop } from "./shop";

const steps = [
  "Dry the wood in the oven until two weighings hours apart agree. Cool it, bag it.",
  "Fluid over the pieces, ballast of stainless steel or glass on them, room above for the foam.",
  "Vacuum, slowly, until the bubbling stops. Never leave it alone.",
  "Let the air in: now the resin goes into the wood. Soak at least twice as long as the vacuum took.",
  "Drain, stand apart, bake until the core is hot. Sticky pieces are baked again.",
  "Note three weights: dry, drained, cured. They make the next run better.",
];

const warnings = [
  "Use only a chamber made and rated for vacuum, behind a shield.",
  "Gloves, eye protection, moving air; dust mask when cutting and turning.",
  "Never an oven used for food, never left alone.",
  "Makers' instructions and safety data sheets come before every number here.",
];

/** One page for the audience, in big type. */
export function handoutSheet(kit: Kit, shop: Shop): Page {
  const page = new Page(
    "Handout",
    "One page to take home: how long to bake, how much dye, and what never to do.",
    [14, 17, 3, 14, 14, 34],
    { pages: 1 },
  );
  page.say("Stabilising wood: to take home", "title");
  const { row } = page;
  const us = kit.system === "US";
  page.table(
    {
      thickness: { title: `thick, ${kit.unit("length")}`, look: "big" },
      minutes: {
        title: "bake, minutes",
        look: "big",
        format: "0",
        spills: (all) => ask(bake, { thickness: all.thickness, length: us ? 5 : 125 }),
      },
    },
    (us ? [0.5, 0.625, 0.75, 0.875, 1, 1.25, 1.5, 2] : [12, 15, 20, 22, 25, 30, 40, 50]).map((thickness) => ({ thickness })),
  );
  const { row: below } = page;
  page.row = row;
  page.table(
    {
      fluid: { title: `fluid, ${kit.unit("fluid")}`, look: "big" },
      dye: { title: `dye, ${kit.unit("powder")}`, look: "big", format: "0.00", spills: (all) => ask(dye, { fluid: all.fluid }) },
      spoons: { title: "in spoons", look: "big", each: (all) => ask(spoons, { dye: all.dye }) },
    },
    [0.5, 1, 1.5, 2, 3, 4, 6, 8].map((fluid) => ({ fluid })),
    { column: 3 },
  );
  page.row = below;
  page.say(
    formula`"Square pieces ${us ? "5 in" : "125 mm"} long, of a middling wood, from "&ROUND(${shop.holds("room")},0)&" to "&ROUND(${shop.holds("core")},0)&" ${kit.unit("temperature")} in the middle, oven at "&ROUND(${shop.holds("oven")},0)&" ${kit.unit("temperature")}, pieces "&${shop.holds("in the oven")}&". The resin's own label comes first."`,
    "bigNote",
  );
  page.skip();
  for (const [i, step] of steps.entries()) page.say(`${i + 1}. ${step}`, "big");
  page.skip();
  for (const warning of warnings) page.say(warning, "bigCaution");
  return page;
}

import { fractions, plainNumber } from "../../../shared/numberformat";
import { bake } from "../../cure/bake";
import { ovenSurfaceCoefficient } from "../../cure/settings";
import { dye } from "../../resin/dye";
import { spoons } from "../../resin/spoons";
import { middlingGravity } from "../../wood/voids";
import { ask, type Formula, formula, given } from "../formula";
import { type Kit, readShop } from "../kit";
import { Page } from "../page";
import { cellIn, type Ref, whole } from "../place";
import { sheetTable } from "../sheettable";
import { ownReason } from "../verdict";
import { bakedBy, ovenBlock } from "./ovenblock";
import type { Shop } from "./shop";

/** The first of the columns that are not printed. */
const beyond = 8;

const surfaceOf = (way: string) => Number(readShop([["in the oven", way]]).get(ovenSurfaceCoefficient));

/** A column for each way to bake; the one that My Shop has also follows a surface coefficient typed there. */
function ovenBlocks(page: Page, kit: Kit, shop: Shop) {
  const [way, typed] = [shop.holds("in the oven"), shop.holds(ovenSurfaceCoefficient.name)];
  const bare = formula`IF(${way}="foil",${surfaceOf("spaced")},${typed})`;
  const foil = formula`IF(${way}="foil",${typed},${surfaceOf("foil")})`;
  const block = (column: number, title: string, surface: Formula) =>
    ovenBlock(page, kit, shop, { row: 1, column }, title, [[ovenSurfaceCoefficient.name, surface]], {
      heading: "bigHeading",
      words: "bigNote",
    });
  return {
    bare: block(beyond, "baked bare", bare),
    foil: block(beyond + 3, "baked in foil", foil),
  };
}

function stepsOf(kit: Kit, shop: Shop): Formula[] {
  const way = shop.holds("in the oven");
  // Oven-dry is 103 ± 2 °C: EN 13183-1.
  return [
    formula`"1. Dry the wood in the oven at ${kit.by("215 to 220 °F", "103 °C")} until two weighings 2 hours apart agree. Cool it and bag it."`,
    formula`"2. Cover the pieces with resin, hold them down with stainless steel, leave room for foam."`,
    formula`"3. Pull vacuum slowly until the bubbling stops. Stay with it."`,
    formula`"4. Let the air in: now the resin goes into the wood. Soak at least twice as long as the vacuum took."`,
    formula`"5. Drain, "&IF(${way}="foil","wrap each in foil",IF(${way}="fan","stand bare and apart, fan on","stand bare and apart"))&", bake until the core is hot. Bake sticky pieces again."`,
    formula`"6. Write down three weights: dry, drained, cured. They make the next plan better."`,
  ];
}

const warningsOf = (shop: Shop): Formula[] => [
  formula`"Use only a chamber made and rated for vacuum, behind a shield. Vent the pump outdoors."`,
  formula`"Gloves, eye protection, fresh air; dust mask when cutting and turning."`,
  formula`"Wet wood steams, warm wood sets the resin: dry it, then let it cool."`,
  formula`"Do not use an oven used for food. Stay with it. No flame near it. Ventilate."`,
  formula`"Thick or bundled pieces can run hot and smoke: bake them apart."`,
  formula`"Mixed resin keeps about "&ROUND(${shop.holds("catalyzed months")},0)&IF(ROUND(${shop.holds("catalyzed months")},0)=1," month"," months")&", cool, with air above it, never stored under vacuum."`,
  formula`"Makers' instructions and safety data sheets come before any number here."`,
];

/** One page for the audience, in big type. */
export function handoutSheet(kit: Kit, shop: Shop): Page {
  const page = new Page(
    "Handout",
    "One page to take home: how long to bake, how much dye, and what never to do.",
    [14, 14, 14, 2, 12, 12, 34, 3, 36, 10, 3, 36, 10],
    { pages: 1, columns: beyond - 1, footer: 13 },
  );
  page.say("Stabilizing wood: take-home sheet", "title");
  const { row } = page;
  const length = kit.by(5, 125);
  const ovens = ovenBlocks(page, kit, shop);
  const units = shop.holds("units");
  const ours = (made: Formula) => formula`IF(${units}="${kit.system}",${made},"")`;
  const minutes = (thickness: Ref, oven: Ref) => {
    const numbers = [...bakedBy, ""].map((_, i) => cellIn(oven, 1 + i, 1));
    return ours(given(numbers, ask(bake, { thickness, length, shop: oven })));
  };
  const baked = sheetTable(
    page,
    {
      thickness: { title: `thick, ${kit.unit("length")}`, look: "big", format: kit.by(fractions, plainNumber) },
      bare: { title: "bare, min", look: "big", format: "0", spills: (all) => minutes(all.thickness, ovens.bare) },
      foil: { title: "foil, min", look: "big", format: "0", spills: (all) => minutes(all.thickness, ovens.foil) },
    },
    kit.by([0.5, 0.625, 0.75, 0.875, 1, 1.25, 1.5, 2], [12, 15, 20, 22, 25, 30, 40, 50]).map((thickness) => ({ thickness })),
  );
  const { row: below } = page;
  page.row = row;
  sheetTable(
    page,
    {
      fluid: { title: `resin, ${kit.unit("fluid")}`, look: "big", format: plainNumber },
      dye: { title: `dye, ${kit.unit("powder")}`, look: "big", format: "0.00", spills: (all) => ours(ask(dye, { resin: all.fluid })) },
      spoons: { title: "in spoons", look: "bigWords", each: (all) => ask(spoons, { dye: all.dye }) },
    },
    [0.5, 1, 1.5, 2, 3, 4, 6, 8].map((fluid) => ({ fluid })),
    { column: 4 },
  );
  page.row = below;
  const degrees = (name: string) => formula`ROUND(${shop.holds(name)},0)&" ${kit.unit("temperature")}"`;
  const told = formula`"For square pieces ${length} ${kit.unit("length")} long, specific gravity ${middlingGravity}, from "&${degrees("room")}&" to "&${degrees("core")}&" in the middle, oven at "&${degrees("oven")}&". Heavy wood, or an oven cooler than its dial, takes up to 80 % longer. Above ${kit.by("1 1/4 in", "30 mm")} it is more than the usual 30 to 60 min. The resin's own label comes first."`;
  const all = [baked.of.bare, baked.of.foil];
  const missing = formula`COUNT(${whole(all[0])},${whole(all[1])})<COUNT(${whole(baked.of.thickness)})*2`;
  const foreign = formula`"My Shop's units are not ${kit.system}, and this file is made for ${kit.system}: change “units” there, and the numbers come back."`;
  const why = formula`"Where minutes are missing, check oven, core, room and thickest on My Shop (core between room and oven); without the add-in the minutes are fixed. "`;
  const note = page.say(formula`IF(${units}<>"${kit.system}",${foreign},IF(${missing},${ownReason(why)},"")&${told})`, "bigNote");
  page.alert("bad", { ...note, columns: beyond - 1 }, formula`IF(${units}<>"${kit.system}",TRUE,${missing})`);
  page.skip();
  for (const step of stepsOf(kit, shop)) page.say(step, "big");
  page.skip();
  for (const warning of warningsOf(shop)) page.say(warning, "bigCaution");
  return page;
}

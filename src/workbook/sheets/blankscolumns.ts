import { bake } from "../../cure/bake";
import { uptake } from "../../resin/uptake";
import { gravity } from "../../wood/gravity";
import { moisture } from "../../wood/moisture";
import { pieceGravity } from "../../wood/piecegravity";
import { suitability } from "../../wood/suitability";
import { voids } from "../../wood/voids";
import { ask, type Formula, formula } from "../formula";
import type { Kit } from "../kit";
import type { Ref } from "../place";
import type { Column, Columns } from "../sheettable";
import { ownReason } from "../verdict";
import { planWords, wrongWith } from "./blankproblems";
import type { RunLog } from "./runlog";
import type { Shop } from "./shop";
import type { Vessel } from "./vessel";
import type { Woods } from "./woods";

const states = ["sound", "spalted", "punky"];

/** From weight and size where both were measured, else from the table: no table knows burl or decayed wood. */
const gravityOf = ({ wood, named, dryWeight, volume }: Columns, woods: Woods): Formula => {
  const lookedUp = formula`IF(${named}="","no wood called "&${wood}&" is in the list on the sheet Woods",INDEX(${woods.gravity},MATCH(${named},${woods.names},0)))`;
  const tabled = ask(gravity, { species: wood }, lookedUp);
  const weighed = ask(pieceGravity, { weight: dryWeight, volume });
  return formula`IF(AND(${wood}="",${dryWeight}=""),"",IF(OR(${dryWeight}="",${volume}=""),${tabled},${weighed}))`;
};

/** What the columns of Blanks take from the rest of the workbook. */
interface Sources {
  readonly kit: Kit;
  readonly shop: Shop;
  readonly woods: Woods;
  readonly log: RunLog;
  /** The shop as it bakes at the ends of the likely range. */
  readonly ends: { readonly short: Ref; readonly long: Ref };
  readonly tub: Vessel;
}

/** The columns of Blanks: what is typed of a kind of blank, then what is worked out of it. */
export function blanksColumns({ kit, shop, woods, log, ends, tub }: Sources) {
  const length = kit.unit("length");
  const weight = formula`IF(${shop.holds("scale reads")}="","",${shop.holds("scale reads")})`;
  const each = { from: 0, to: 1e6 };
  const side = { from: kit.of("length", 0.01, 2), to: kit.of("length", 200) };
  const lengthUnit = { unit: length };
  const baked = ({ thickness, width, length, gravity }: Columns, block?: Ref) =>
    ask(bake, { thickness, width, length, gravity, ...(block ? { shop: block } : {}) });
  return {
    kind: { title: "kind", input: true, hint: "A name of your own: a kind of blank, or the number on one piece." },
    count: { title: "count", input: { from: 0, to: 1e6, whole: true } },
    thickness: { title: "thickness", ...lengthUnit, input: side },
    width: { title: "width", ...lengthUnit, input: side },
    length: { title: "length", ...lengthUnit, input: side },
    wood: { title: "wood", input: { list: woods.names }, hint: "A wood from the list on Woods." },
    state: { title: "state", input: { list: states, only: true } },
    weight: { title: "weight", unit: weight, format: "0.0", input: each, hint: "One piece, as it is now." },
    dryWeight: { title: "oven-dry", unit: weight, format: "0.0", input: each, hint: "The same piece, oven-dry." },
    color: { title: "color", input: true, hint: "Of the resin, such as blue. Blank is a color of its own; clear takes no dye." },
    volume: {
      title: "wood, each",
      unit: kit.unit("volume"),
      format: kit.by("0.00", "0.0"),
      each: ({ thickness, width, length }) =>
        formula`IF(COUNT(${thickness},${width},${length})<3,"",${thickness}*${width}*${length}/${kit.by(1, 1000)})`,
    },
    moisture: { title: "moisture", format: "0.0%", spills: (all) => ask(moisture, { weight: all.weight, dryWeight: all.dryWeight }) },
    gravity: { title: "gravity", format: "0.00", each: (all) => gravityOf(all, woods) },
    voids: { title: "voids", format: "0%", spills: (all) => ask(voids, { gravity: all.gravity, moisture: all.moisture }) },
    uptake: {
      title: "resin, each",
      unit: kit.unit("fluid"),
      format: "0.000",
      spills: (all) => ask(uptake, { solids: all.volume, gravity: all.gravity, fullness: all.fullness, moisture: all.moisture }),
    },
    likely: {
      title: "likely",
      look: "words",
      each: ({ uptake, spread }) =>
        formula`IF(AND(ISNUMBER(${uptake}),ISNUMBER(${spread})),TEXT(${uptake}*MAX(0,1-${spread}),"0.000")&" to "&TEXT(${uptake}*(1+${spread}),"0.000"),"")`,
    },
    all: {
      title: "resin, all",
      unit: kit.unit("fluid"),
      format: "0.00",
      each: (all) => formula`IF(AND(ISNUMBER(${all.uptake}),ISNUMBER(${all.count})),${all.uptake}*${all.count},"")`,
    },
    wrong: { title: "problem", look: "alarm", each: (all) => ownReason(wrongWith(all, shop, tub)) },
    inPlan: { title: "in the plan", look: "words", each: (all) => planWords(all) },
    grade: {
      title: "grade",
      beside: ["reason"],
      look: "words",
      spills: (all) => ask(suitability, { wood: all.judged, thickness: all.thickness, moisture: all.moisture, condition: all.state }),
    },
    bake: {
      title: "bake",
      look: "words",
      each: ({ minutes, short, long }) =>
        formula`IF(ISNUMBER(${minutes}),"about "&TEXT(${minutes},"0")&" min"&IF(ISNUMBER(${short}),", likely "&TEXT(${short},"0")&IF(ISNUMBER(${long})," to "&TEXT(${long},"0")," or more"),""),"")`,
    },
    fullness: {
      title: "fullness",
      format: "0%",
      hint: "How full the pores get: the average of this wood's own runs in the Run Log, or My Shop's if there are none.",
      each: ({ named }) => log.fullnessOf(named),
    },
    minutes: { title: "min", look: "note", format: "0", spills: (all) => baked(all) },
    short: { title: "shortest", look: "note", format: "0", spills: (all) => baked(all, ends.short) },
    long: { title: "longest", look: "note", format: "0", spills: (all) => baked(all, ends.long) },
    // The grade uses the same gravity as the voids; the name only tells how the heartwood takes resin.
    judged: {
      title: "graded as",
      look: "note",
      each: ({ wood, gravity }) => formula`IF(ISNUMBER(${gravity}),IF(${wood}="",${gravity},${wood}&", "&ROUND(${gravity},9)),${wood})`,
    },
    spread: {
      title: "spread",
      look: "note",
      format: "0%",
      each: ({ named }) => log.spreadOf(named),
    },
    // The listed name makes different spellings one wood, here and in the Run Log.
    named: { title: "wood, as listed", look: "note", each: ({ wood }) => woods.named(wood) },
  } satisfies Record<string, Column>;
}

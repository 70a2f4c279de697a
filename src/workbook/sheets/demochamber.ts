import { arrange } from "../../chamber/arrange";
import { ballast, steel } from "../../chamber/ballast";
import { fill } from "../../chamber/fill";
import { headroom } from "../../chamber/headroom";
import { uptake } from "../../resin/uptake";
import { ask, askCell, type Formula, formula, given } from "../formula";
import type { Kit } from "../kit";
import { goneWords, type Page } from "../page";
import type { Ref } from "../place";
import { notHere } from "../shown";
import type { Shown } from "./piece";
import type { Shop } from "./shop";
import { step } from "./step";

const product = (a: Ref, b: Ref): Formula => formula`IF(COUNT(${a},${b})=2,${a}*${b},"")`;

/** What stands in the chamber at the demo. */
export interface InChamber {
  readonly solids: Ref;
  readonly fluid: Ref;
  readonly all: Ref;
}

/** The load arranged, covered and held under. */
export function inTheChamber(page: Page, kit: Kit, shop: Shop, shown: Shown): InChamber {
  const { chamber, height } = shop;
  const { thickness, width, length, count, gravity } = shown;
  const length1 = kit.unit("length");
  const volume = kit.unit("volume");
  const solids = page.line({ label: "wood in the load", formula: product(shown.volume, count), unit: volume, format: kit.by("0.0", "0") });
  const weight = page.line({ label: "its oven-dry weight", formula: product(shown.dryWeight, count), unit: "g", format: "0" });
  const pieces = { chamber, height, thickness, width, length, count };
  const asked = (column: number) => given(Object.values(pieces), askCell(arrange, { ...pieces, gravity }, column));
  const noFit = "does not fit: fewer pieces, less cover, or a larger chamber";
  const way = page.line({
    label: "arrange: upright or lying",
    formula: asked(1),
    look: "words",
    note: formula`IF(ISERROR(${page.next}),"${noFit}",IF(${page.next}="${notHere}","${goneWords}","the way that needs least fluid"))`,
  });
  page.put(way.row, 4, { look: "input" });
  page.alert("bad", way, formula`IF(ISERROR(${way}),TRUE,AND(LEN(${way})>0,${way}<>"upright",${way}<>"lying",${way}<>"${notHere}"))`);
  step(page, { label: "arrange: layers", made: asked(2), format: "0", good: "one on the other", bad: noFit });
  const stack = step(page, {
    label: "arrange: height of the stack",
    made: asked(3),
    unit: length1,
    format: kit.by("0.00", "0"),
    good: "from the bottom of the chamber",
    bad: noFit,
    gone: "stack the pieces in the chamber, and type the height here",
  });
  const taken = step(page, {
    label: "fluid the wood will take",
    made: ask(uptake, { solids, gravity }),
    unit: kit.unit("fluid"),
    format: "0.00",
    good: "at the fullness of My Shop; the log makes it better",
    bad: "too wet or too dense to take any",
  });
  const weights = step(page, {
    label: "ballast, steel",
    made: ask(ballast, { solids, weight }),
    unit: "g",
    format: "0",
    good: "stainless steel or glass, so that nothing floats",
    bad: "the weight is heavier than any wood: check it and the scale",
  });
  const inVolume = (steel / 1000) * kit.by(16.387064, 1);
  const all = page.line({
    label: "wood and ballast",
    formula: formula`IF(COUNT(${solids},${weights})=2,${solids}+${weights}/${inVolume},"")`,
    unit: volume,
    format: kit.by("0.0", "0"),
  });
  const fluid = step(page, {
    label: "fluid to pour",
    made: given([stack, all], ask(fill, { chamber, stack, solids: all, uptake: taken })),
    unit: kit.unit("fluid"),
    format: "0.00",
    good: "covers the pieces to the end",
    bad: "the pieces do not fit under it",
  });
  step(page, {
    label: "headroom for the foam",
    made: given([fluid, all], ask(headroom, { chamber, height, fluid, solids: all })),
    unit: length1,
    format: kit.by("0.0", "0"),
    good: "enough; pump slowly and watch all the same",
    bad: "too little: pour less or take pieces out",
    least: formula`${shop.holds("foam room")}*${height}`,
  });
  return { solids, fluid, all };
}

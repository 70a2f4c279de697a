import { arrange } from "../../chamber/arrange";
import { ballast, steel } from "../../chamber/ballast";
import { fill } from "../../chamber/fill";
import { headroom } from "../../chamber/headroom";
import { dyetopup } from "../../resin/dyetopup";
import { expiry } from "../../resin/expiry";
import { mix } from "../../resin/mix";
import { spoons } from "../../resin/spoons";
import { uptake } from "../../resin/uptake";
import { airOut } from "../../vacuum/airout";
import { fullVacuum } from "../../vacuum/fullvacuum";
import { pumpDown } from "../../vacuum/pumpdown";
import { waterBoils } from "../../vacuum/waterboils";
import { ask, type Formula, formula, given } from "../formula";
import type { Kit } from "../kit";
import { failed, type Page, verdict } from "../page";
import type { Ref } from "../place";
import { later, startFrom } from "./backward";
import type { Countdown } from "./countdown";
import { day, moment } from "./day";
import type { Shown } from "./piece";
import type { Shop } from "./shop";

export interface Run {
  readonly solids: Ref;
  readonly weight: Ref;
}

/** Load 3, from the bench to the oven, with a box for what it really was. */
export function atTheDemo(page: Page, kit: Kit, shop: Shop, shown: Shown, times: Countdown): Run {
  page.heading("Load 3, in the order of the work", "", "", "in words", "really");
  const run = inTheChamber(page, kit, shop, shown);
  underVacuum(page, kit, shop, run);
  theFluid(page, kit, shop, shown, run.fluid);
  theClock(page, shown, times);
  return run;
}

/** A line with words on whether it worked out, a box for what really was, and a mark where it did not. */
function step(page: Page, label: string, made: Formula, unit: string, format: string, good: string, bad: string): Ref {
  const ref = page.line({ label, formula: made, unit, format, note: verdict(page.next, good, bad) });
  page.put(ref.row, 4, { look: "input" });
  page.alert("bad", ref, failed(ref));
  return ref;
}

const product = (a: Ref, b: Ref): Formula => formula`IF(COUNT(${a},${b})=2,${a}*${b},"")`;

interface InChamber extends Run {
  readonly fluid: Ref;
  readonly all: Ref;
}

function inTheChamber(page: Page, kit: Kit, shop: Shop, shown: Shown): InChamber {
  const { chamber, height } = shop;
  const { thickness, width, length, count, gravity } = shown;
  const length1 = kit.unit("length");
  const volume = kit.unit("volume");
  const solids = page.line({ label: "wood in the load", formula: product(shown.volume, count), unit: volume, format: "0.0" });
  const weight = page.line({ label: "its oven-dry weight", formula: product(shown.dryWeight, count), unit: "g", format: "0.0" });
  const arranged = ask(arrange, { chamber, height, thickness, width, length, count, gravity });
  const asked = (cell: number) => given([chamber, height, thickness, width, length, count], formula`INDEX(${arranged},1,${cell})`);
  const noFit = "does not fit: fewer pieces, less cover, or a larger chamber";
  const way = page.line({
    label: "arrange: upright or lying",
    formula: asked(1),
    look: "words",
    note: formula`IF(ISERROR(${page.next}),"${noFit}","the way that needs least fluid")`,
  });
  page.put(way.row, 4, { look: "input" });
  page.alert("bad", way, formula`IF(ISERROR(${way}),TRUE,AND(LEN(${way})>0,${way}<>"upright",${way}<>"lying"))`);
  step(page, "arrange: layers", asked(2), "", "0", "one on the other", noFit);
  const stack = step(page, "arrange: height of the stack", asked(3), length1, "0.00", "from the bottom of the chamber", noFit);
  const taken = step(
    page,
    "fluid the wood will take",
    ask(uptake, { solids, gravity }),
    kit.unit("fluid"),
    "0.000",
    "at the fullness of My Shop; the log makes it better",
    "too wet or too dense to take any",
  );
  const weights = step(
    page,
    "ballast, steel",
    ask(ballast, { solids, weight }),
    "g",
    "0",
    "stainless steel or glass, so that nothing floats",
    "the weight is heavier than any wood: check it and the scale",
  );
  const inVolume = kit.system === "US" ? (steel / 1000) * 16.387064 : steel / 1000;
  const all = page.line({
    label: "wood and ballast",
    formula: formula`IF(COUNT(${solids},${weights})=2,${solids}+${weights}/${inVolume},"")`,
    unit: volume,
    format: "0.0",
  });
  const fluid = step(
    page,
    "fluid to pour",
    ask(fill, { chamber, stack, solids: all, uptake: taken }),
    kit.unit("fluid"),
    "0.00",
    "covers the pieces to the end",
    "the pieces do not fit under it",
  );
  step(
    page,
    "headroom for the foam",
    ask(headroom, { chamber, height, fluid, solids: all }),
    length1,
    "0.00",
    "enough; pump slowly and watch all the same",
    "too little: pour less or take pieces out",
  );
  return { solids, weight, fluid, all };
}

function underVacuum(page: Page, kit: Kit, shop: Shop, { fluid, all }: InChamber): void {
  const pressure = kit.unit("pressure");
  const full = step(
    page,
    "deepest gauge reading here",
    ask(fullVacuum, {}),
    pressure,
    "0.0",
    "at this altitude and with this pump",
    "check altitude and barometer on My Shop",
  );
  const gauge = page.line({
    label: "gauge to go to",
    formula: formula`IF(ISNUMBER(${full}),0.97*${full},"")`,
    unit: pressure,
    format: "0.0",
    note: "97 % of it; type your own over it",
  });
  page.put(gauge.row, 4, { look: "input" });
  step(
    page,
    "air out of the pores by then",
    ask(airOut, { gauge }),
    "",
    "0%",
    "at most: closed pores keep theirs",
    "the gauge is deeper than the air pressure",
  );
  step(
    page,
    "water boils at",
    ask(waterBoils, { gauge }),
    kit.unit("temperature"),
    "0",
    "so may the resin: bubbles alone prove nothing",
    "at any temperature above freezing",
  );
  const [area, perFluid] = [
    formula`PI()/4*${shop.chamber}^2*${shop.height}${kit.system === "US" ? "" : "/1000"}`,
    kit.system === "US" ? 57.75 : 1000,
  ];
  const room = page.line({
    label: "empty room in the chamber",
    formula: formula`IF(COUNT(${shop.chamber},${shop.height},${fluid},${all})=4,(${area}-${all})/${perFluid}-${fluid},"")`,
    unit: kit.unit("fluid"),
    format: "0.0",
  });
  step(
    page,
    "time to pump it down",
    given([room, shop.pumpRate], ask(pumpDown, { volume: room, rate: shop.pumpRate, gauge })),
    "min",
    "0.0",
    "at least; go slowly while it foams",
    "the pump does not reach this gauge",
  );
}

function theFluid(page: Page, kit: Kit, shop: Shop, shown: Shown, fluid: Ref): void {
  const onHand = shop.holds("resin on hand");
  const mixed = (cell: number) => given([fluid], formula`INDEX(${ask(mix, { need: fluid, onHand })},1,${cell})`);
  const unit = kit.unit("fluid");
  const bad = "there is no fluid to pour yet";
  const toMix = step(page, "mix", mixed(1), unit, "0.00", "whole packets; what is on hand goes in first", bad);
  step(page, "packets of catalyst", mixed(2), "", "0", "measured as the label says, never by eye", bad);
  step(page, "fluid left in the tub", mixed(3), unit, "0.00", "goes under its old date into the Resin Book", bad);
  const dyed = step(
    page,
    "dye",
    given([toMix], ask(dyetopup, { onHand, itsRate: shop.holds("resin dye rate"), added: toMix })),
    kit.unit("powder"),
    "0.00",
    "for all of it, what is on hand too",
    "too strong already: add clear fluid, no dye",
  );
  const measured = page.line({
    label: "dye in spoons",
    formula: ask(spoons, { dye: dyed }),
    look: "words",
    note: verdict(dyed, "level spoons", "there is no dye to measure"),
  });
  page.put(measured.row, 4, { look: "input" });
  step(
    page,
    "mixed today, use by",
    ask(expiry, { mixed: shown.start }),
    "",
    day,
    "warmth shortens it; thick or stringy resin is finished",
    "give the day of the demo",
  );
}

function theClock(page: Page, shown: Shown, times: Countdown): void {
  const { vacuum, soak, loading, oven } = times;
  const line = (label: string, made: Formula, note: string) => {
    const ref = page.line({ label, formula: made, format: moment, note });
    page.put(ref.row, 4, { look: "input", format: moment });
    return ref;
  };
  const released = line("vacuum until", later(shown.start, vacuum), "or until the bubbling stops: write the minutes down below");
  const soaked = line("soak, air let in, at least until", later(released, soak), "longer does no harm");
  const out = line("take out and drain from", startFrom(soaked, loading, times), "drained pieces only go into the oven");
  const drained = line("drained by", later(out, loading), "weigh them now, for FULLNESS");
  const baking = line("wrap and bake from", startFrom(drained, oven, times), "never left alone");
  line("done and cool by", later(baking, oven), "weigh them again");
}

import { dyetopup } from "../../resin/dyetopup";
import { expiry } from "../../resin/expiry";
import { mix } from "../../resin/mix";
import { spoons } from "../../resin/spoons";
import { ask, askCell, type Formula, formula, given } from "../formula";
import type { Kit } from "../kit";
import { type Page, verdict } from "../page";
import type { Ref } from "../place";
import { later, startFrom } from "./backward";
import type { Countdown } from "./countdown";
import { day, moment } from "./day";
import { type InChamber, inTheChamber } from "./demochamber";
import { underVacuum } from "./demovacuum";
import { wayWords } from "./ovenway";
import type { Shown } from "./piece";
import type { Shop } from "./shop";
import { step } from "./step";

/** Load 3, from the bench to the oven, with a box for what it really was. */
export function atTheDemo(page: Page, kit: Kit, shop: Shop, shown: Shown, times: Countdown): InChamber {
  page.heading("Load 3, in the order of the work", "", "", "in words", "really");
  const run = inTheChamber(page, kit, shop, shown);
  underVacuum(page, kit, shop, run);
  theFluid(page, kit, shop, shown, run.fluid, times);
  theClock(page, shop, shown, times);
  return run;
}

/** Day of the oldest part of the fluid, and until when that is good: what is on hand goes in, and topping up resets no date. */
function theDate(page: Page, shop: Shop, { start }: Shown, { intake, soak }: Countdown) {
  const onHand = shop.holds("resin on hand");
  const mixedOn = shop.typed("resin mixed on");
  const isAhead = formula`IF(COUNT(${start},${mixedOn})=2,AND(SUM(${onHand})>0,${mixedOn}>=${start}+1),FALSE)`;
  const oldest = page.line({
    label: "oldest part mixed on",
    formula: formula`IF(OR(ISNUMBER(${start})=FALSE,${shop.isUndated}),"",IF(SUM(${onHand})>0,MIN(${start},${mixedOn}),${start}))`,
    format: day,
    note: formula`IF(${shop.isUndated},"the resin on hand has no date on My Shop: read it off the tub",IF(${isAhead},"the resin on hand is dated after the demo: see My Shop","on My Shop if any is on hand, else today"))`,
  });
  page.alert("bad", oldest, formula`OR(${shop.isUndated},${isAhead})`);
  const own = page.next;
  const isPast = formula`IF(COUNT(${own},${start})=2,${own}<INT(${start}+(${intake}+${soak})/24),FALSE)`;
  step(page, {
    label: "use all of it by",
    made: given([oldest], ask(expiry, { mixed: oldest })),
    format: day,
    good: "warmth shortens it; thick or stringy resin is finished",
    bad: "give the day of the demo, and that of the resin on hand",
    unless: { when: isPast, words: "out of date by then: mix afresh, set “resin on hand” to 0" },
  });
  return { when: formula`OR(${isPast},${shop.isUndated})`, words: "counts on resin that is out of date, or has none: see above" };
}

function theFluid(page: Page, kit: Kit, shop: Shop, shown: Shown, fluid: Ref, times: Countdown): void {
  const onHand = shop.holds("resin on hand");
  const unless = theDate(page, shop, shown, times);
  const mixed = (column: number) => given([fluid], askCell(mix, { need: fluid, onHand }, column));
  const unit = kit.unit("fluid");
  const bad = "there is no fluid to pour yet";
  const toMix = step(page, {
    label: "mix",
    made: mixed(1),
    unit,
    format: "0.00",
    good: "whole packets; what is on hand goes in first",
    bad,
    unless,
  });
  step(page, { label: "packets of catalyst", made: mixed(2), format: "0", good: "measured as the label says, never by eye", bad });
  step(page, {
    label: "not poured, stays in the tub",
    made: mixed(3),
    unit,
    format: "0.00",
    good: "more comes back from the chamber: measure it all for the Resin Book",
    bad,
  });
  const dyed = step(page, {
    label: "dye",
    made: given([toMix], ask(dyetopup, { onHand, itsRate: shop.holds("resin dye rate"), added: toMix })),
    unit: kit.unit("powder"),
    format: "0.00",
    good: "for all of it, what is on hand too",
    bad: "too strong already: add clear fluid, no dye",
  });
  const measured = page.line({
    label: "dye in spoons",
    formula: ask(spoons, { dye: dyed }),
    look: "words",
    note: verdict(dyed, "level spoons", "there is no dye to measure"),
  });
  page.put(measured.row, 4, { look: "input" });
}

function theClock(page: Page, shop: Shop, shown: Shown, times: Countdown): void {
  const { intake, soak, loading, oven } = times;
  const line = (label: string, made: Formula, note: string | Formula) => {
    const ref = page.line({ label, formula: made, format: moment, note });
    page.put(ref.row, 4, { look: "input", format: moment });
    return ref;
  };
  const released = line(
    "vacuum until",
    later(shown.start, intake),
    "load 3 in first; or until the bubbling stops: write the minutes down below",
  );
  const soaked = line("soak, air let in, at least until", later(released, soak), "longer does no harm");
  const out = line("take out and drain from", startFrom(soaked, loading, times), "drained pieces only go into the oven");
  const drained = line("drained by", later(out, loading), "weigh them now, for FULLNESS");
  const baking = line("get ready and bake from", startFrom(drained, oven, times), wayWords(shop));
  line("done and cool by", later(baking, oven), "the oven is never left alone; weigh them again");
}

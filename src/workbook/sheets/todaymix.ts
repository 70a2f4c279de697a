import { dyetopup } from "../../resin/dyetopup";
import { expiry } from "../../resin/expiry";
import { mix } from "../../resin/mix";
import { spoons } from "../../resin/spoons";
import { ask, askCell, type Formula, formula, given } from "../formula";
import type { Kit } from "../kit";
import type { Page } from "../page";
import { type Ref, refTo } from "../place";
import { failed, verdict } from "../verdict";
import { day } from "./day";
import type { Shop } from "./shop";
import { across, type Each, oneLine, threeLine } from "./three";
import type { Begins } from "./todaytimes";

interface Need {
  readonly pour: Each<Ref>;
  readonly add: Each<Ref> | undefined;
  readonly uptakes: Each<Formula>;
}

/** What one load leaves serves the next: the most that stands in use at once must be there. */
export function mixLines(page: Page, kit: Kit, shop: Shop, { at }: Begins, { pour, add, uptakes }: Need, done: Each<Ref>): Ref {
  const unit = kit.unit("fluid");
  const onHand = shop.holds("resin on hand");
  const uptake = threeLine(page, "resin the wood will take", (load) => uptakes[load], {
    unit,
    format: "0.00",
    good: "with its wood’s fullness in the Run Log, or My Shop’s if it has none",
    bad: "see the load",
  });
  const own = refTo(page.sheet.name, page.row + 2, 1);
  const isPast = formula`IF(COUNT(${own},${across(done)})>1,${own}<INT(MAX(${across(done)})),FALSE)`;
  const stock = formula`TEXT(${onHand},"0.00")&" ${unit} on My Shop, but it expires before the run is over"`;
  const has = oneLine(page, "on hand", formula`IF(${isPast},0,${onHand})`, {
    unit,
    format: "0.00",
    good: formula`IF(${isPast},${stock},"My Shop, from the Resin Book; it goes in first")`,
  });
  const mixedOn = shop.typed("resin mixed on");
  const isAhead = formula`IF(COUNT(${at},${mixedOn})=2,AND(SUM(${onHand})>0,${mixedOn}>=${at}+1),FALSE)`;
  const oldest = oneLine(
    page,
    "oldest part mixed on",
    formula`IF(OR(ISNUMBER(${at})=FALSE,${shop.isUndated}),"",IF(SUM(${onHand})>0,MIN(${at},${mixedOn}),${at}))`,
    {
      format: day,
      good: formula`IF(${isAhead},"the resin on hand is dated after the run: see My Shop","on My Shop if any is on hand, else this day")`,
    },
  );
  page.alert("bad", oldest, formula`OR(${shop.isUndated},${isAhead})`);
  const useBy = oneLine(page, "use it all by", given([oldest], ask(expiry, { mixed: oldest })), {
    format: day,
    good: formula`IF(${isPast},"expired by then: dispose of it, and write “emptied” in the Resin Book","warmth shortens it; thick or stringy resin is finished")`,
  });
  page.alert("bad", useBy, isPast);
  const needOf = (load: number) => formula`SUM(${pour[load]})${add ? formula`+SUM(${add[load]})` : formula``}`;
  const need = oneLine(
    page,
    "resin needed at once",
    formula`IF(COUNT(${across(pour)})=0,"",MAX(${needOf(0)},${needOf(1)}+SUM(${uptake[0]}),${needOf(2)}+SUM(${uptake[0]},${uptake[1]})))`,
    { unit, format: "0.00", good: "what one load leaves serves the next" },
  );
  const mixed = (column: number) => given([need], askCell(mix, { need, onHand: has }, column));
  const amount = oneLine(page, "mix", mixed(1), {
    unit,
    format: "0.00",
    good: formula`IF(${shop.isUndated},"uses resin that has no date: see above",IF(${isPast},"all of it fresh, in whole packets","whole packets; what is on hand goes in first"))`,
  });
  page.alert("bad", amount, formula`OR(${failed(amount)},${shop.isUndated})`);
  oneLine(page, "packets of catalyst", mixed(2), {
    format: "0",
    good: "measured as the label says, never by eye",
    bad: "there is no resin to mix yet",
  });
  const dyed = oneLine(page, "dye", given([amount], ask(dyetopup, { onHand: has, itsRate: shop.holds("resin dye rate"), added: amount })), {
    unit: kit.unit("powder"),
    format: "0.00",
    good: "for all of it, what is on hand too",
    bad: "too strong already: add clear resin, no dye",
  });
  const measured = oneLine(page, "dye in spoons", given([dyed], ask(spoons, { dye: dyed })), { look: "words" });
  page.put(measured.row, 6, { formula: verdict(dyed, "level spoons", "there is no dye to measure"), look: "note" });
  return amount;
}

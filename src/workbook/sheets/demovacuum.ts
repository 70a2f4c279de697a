import { airOut } from "../../vacuum/airout";
import { fullVacuum } from "../../vacuum/fullvacuum";
import { pumpDown } from "../../vacuum/pumpdown";
import { waterBoils } from "../../vacuum/waterboils";
import { ask, formula, given } from "../formula";
import type { Kit } from "../kit";
import type { Page } from "../page";
import type { InChamber } from "./demochamber";
import type { Shop } from "./shop";
import { step } from "./step";

/** What the gauge will show here, and how long the pump takes to it. */
export function underVacuum(page: Page, kit: Kit, shop: Shop, { fluid, all }: InChamber): void {
  const pressure = kit.unit("pressure");
  const full = step(page, {
    label: "deepest gauge reading here",
    made: ask(fullVacuum, {}),
    unit: pressure,
    format: "0.0",
    good: "at this altitude and with this pump",
    bad: "check altitude and barometer on My Shop",
  });
  const { isRefused } = shop;
  const lid = page.line({
    label: "lid",
    formula: formula`IF(${shop.lid}="","",${shop.lid})`,
    look: "words",
    note: formula`IF(${isRefused},"no gauge to go to: use a chamber made and rated for vacuum","from My Shop; this is no approval")`,
  });
  page.alert("bad", lid, formula`LEFT(${lid},11)="do not pump"`);
  const isTooDeep = formula`IF(COUNT(${page.next},${full})=2,${page.next}>${full}*1.000001,FALSE)`;
  const gauge = page.line({
    label: "gauge to go to",
    formula: formula`IF(${isRefused},"",IF(ISNUMBER(${full}),0.97*${full},""))`,
    unit: pressure,
    format: "0.0",
    note: formula`IF(${isTooDeep},"deeper than the gauge can read here: see above","97 % of it; type your own over it")`,
  });
  page.alert("bad", gauge, isTooDeep);
  page.put(gauge.row, 4, { look: "input" });
  step(page, {
    label: "air out of the pores by then",
    made: ask(airOut, { gauge }),
    format: "0%",
    good: "at most: closed pores keep theirs",
    bad: "the gauge is deeper than the air pressure",
  });
  step(page, {
    label: "water boils at",
    made: ask(waterBoils, { gauge }),
    unit: kit.unit("temperature"),
    format: "0",
    good: "so may the resin: bubbles alone prove nothing",
    bad: "at any temperature above freezing",
  });
  const inside = formula`PI()/4*${shop.chamber}^2*${shop.height}${kit.by("", "/1000")}`;
  const room = page.line({
    label: "empty room in the chamber",
    formula: formula`IF(COUNT(${shop.chamber},${shop.height},${fluid},${all})=4,(${inside}-${all})/${kit.by(57.75, 1000)}-${fluid},"")`,
    unit: kit.unit("fluid"),
    format: "0.0",
  });
  step(page, {
    label: "time to pump it down",
    made: given([room, shop.pumpRate, gauge], ask(pumpDown, { volume: room, rate: shop.pumpRate, gauge })),
    unit: "min",
    format: "0.0",
    good: "at least; go slowly while it foams",
    bad: "the pump does not reach this gauge",
  });
}

import { inPractice, ownHeat, practice } from "../../cure/ovenwords";
import { selfheat } from "../../cure/selfheat";
import { ask, type Formula, formula } from "../formula";
import type { Kit } from "../kit";
import type { Page } from "../page";
import type { Ref } from "../place";
import { across, type Each, threeLine } from "./three";
import type { LoadOf } from "./todaypieces";
import type { Lengths } from "./todaytimes";

/** How long, how sure that is, how far the resin warms itself, and why a number is longer than people are used to. */
export function bakeLines(page: Page, kit: Kit, loads: Each<LoadOf>, counts: Each<Ref>, { bake, shortest, longest }: Lengths): void {
  const told = (load: number) =>
    formula`IF(ISNUMBER(${bake[load]}),"about "&ROUND(${bake[load]},0)&" min",IF(${counts[load]}="","","no answer: see below"))`;
  threeLine(page, "in the oven", told, { look: "words", good: "when the core is done; the resin’s label decides" });
  const range = (load: number) =>
    formula`IF(COUNT(${bake[load]},${shortest[load]})=2,ROUND(${shortest[load]},0)&IF(ISNUMBER(${longest[load]})," to "&ROUND(${longest[load]},0)," or more")&" min","")`;
  threeLine(page, "likely", range, { look: "words", good: "about 9 outcomes in 10" });
  threeLine(
    page,
    "the resin’s own heat, at most",
    (load) => formula`IF(${counts[load]}="","",${ask(selfheat, { gravity: loads[load].first.gravity, fullness: loads[load].fullness })})`,
    { unit: kit.unit("rise"), format: "0", good: ownHeat, bad: "the kind of wood is missing: see the problems above" },
  );
  page.say(formula`IF(MAX(${across(bake)})>${practice / 60},${said(inPractice)},"")`);
}

/** A text longer than one literal of a formula may be, sentence by sentence. */
const said = (text: string): Formula =>
  (text.match(/[^.]+\.\s*/g) ?? [text]).map((one) => formula`"${one}"`).reduce((all, one) => formula`${all}&${one}`);

import { type Formula, formula } from "../formula";
import { failed, type Page, verdict } from "../page";
import type { Ref } from "../place";

/** A line of the run sheet. */
export interface Step {
  readonly label: string;
  readonly made: Formula;
  readonly unit?: string;
  readonly format: string;
  /** What is said of it where it worked out, and where it did not. */
  readonly good: string;
  readonly bad: string;
  /** What is said where the plain edition has no formula for what was changed. */
  readonly gone?: string;
  /** A number that is too little is as bad as none. */
  readonly least?: Formula;
  /** What makes a number wrong that worked out, and the words for it. */
  readonly unless?: { readonly when: Formula; readonly words: string };
}

/** A line with words on whether it worked out, a box for what really was, and a mark where it did not. */
export function step(page: Page, { label, made, unit, format, good, bad, gone, least, unless }: Step): Ref {
  const own = page.next;
  const words = verdict(own, good, bad, gone);
  const isShort = least && { when: formula`${own}<${least}*(1-0.000000001)`, words: bad };
  const wrong = unless ?? isShort;
  const isWrong = wrong && formula`IF(ISNUMBER(${own}),${wrong.when},FALSE)`;
  const ref = page.line({ label, formula: made, unit, format, note: isWrong ? formula`IF(${isWrong},"${wrong.words}",${words})` : words });
  page.put(ref.row, 4, { look: "input" });
  page.alert("bad", ref, isWrong ? formula`OR(${failed(ref)},${isWrong})` : failed(ref));
  return ref;
}

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
  /** A number that is too little is as bad as none. */
  readonly least?: Formula;
}

/** A line with words on whether it worked out, a box for what really was, and a mark where it did not. */
export function step(page: Page, { label, made, unit, format, good, bad, least }: Step): Ref {
  const own = page.next;
  const words = verdict(own, good, bad);
  const isShort = least && formula`IF(ISNUMBER(${own}),${own}<${least}*(1-0.000000001),FALSE)`;
  const ref = page.line({ label, formula: made, unit, format, note: isShort ? formula`IF(${isShort},"${bad}",${words})` : words });
  page.put(ref.row, 4, { look: "input" });
  page.alert("bad", ref, isShort ? formula`OR(${failed(ref)},${isShort})` : failed(ref));
  return ref;
}

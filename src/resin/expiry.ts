import { date } from "../../shared/argument";
import { define } from "../../shared/contract";
import { noAnswer } from "../../shared/outcome";
import { as } from "../../shared/quantity";
import { cell } from "../../shared/result";
import { edate } from "../../shared/serial";
import { catalyzedMonths } from "./settings";

/** The last serial day a spreadsheet knows, 31 December 9999. */
const lastDay = 2958465;

/** Use-by day of resin mixed on a day. */
export function useBy(mixed: number, months: number): number {
  const day = edate(mixed, months);
  if (!(day <= lastDay)) throw noAnswer`the use-by date falls after the year 9999: check the months`;
  return day;
}

/** Day until which mixed resin is good: EDATE, clamped to the end of the month. */
export const expiry = define({
  name: "EXPIRY",
  per: "piece",
  asks: "When does the mixed resin expire?",
  args: { mixed: date("day it was mixed", "2026-01-31"), months: catalyzedMonths },
  shop: {},
  returns: cell(date("use-by date", "2026-04-30")),
  format: "yyyy-mm-dd",
  equation: "{months} after {mixed}, on the same day of the month; the last of the month if it has no such day",
  source: "EDATE: OpenDocument 1.3 part 4 (OpenFormula), 6.10.5; three months catalyzed: common practice, no source",
  accuracy: "the day is exact, the shelf life is not: the label decides, and warmth shortens it",
  cautions: ["storage"],
  worked: { typed: ["2026-01-31"], gives: 46142 },
  twin: "EDATE({mixed},{months})",
  run: ({ mixed, months }) => as(useBy(mixed, months)),
});

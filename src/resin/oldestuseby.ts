import { date } from "../../shared/argument";
import { define } from "../../shared/contract";
import { badInput } from "../../shared/outcome";
import { as } from "../../shared/quantity";
import { cell } from "../../shared/result";
import { isoDate } from "../../shared/serial";
import { column } from "../../shared/whole";
import { useBy } from "./expiry";
import { catalyzedMonths } from "./settings";

function oldest(dates: readonly (number | undefined)[]): number {
  const first = dates.reduce<number>((first, day) => Math.min(first, day ?? first), Number.POSITIVE_INFINITY);
  if (!Number.isFinite(first)) throw badInput`the days on which it was mixed are all blank: type at least one`;
  return first;
}

/** Use-by day of mixed resin that was topped up: its oldest part's, which topping up never resets. */
export const oldestuseby = define({
  name: "OLDESTUSEBY",
  per: "call",
  asks: "When does topped-up resin expire?",
  args: { dates: column(date("day it was mixed", "2026-01-31")), months: catalyzedMonths },
  shop: {},
  returns: cell(date("use-by date", "2026-04-30")),
  format: "yyyy-mm-dd",
  equation: "{months} after {oldest}, on the same day of the month; the last of the month if it has no such day",
  source:
    "EDATE: OpenDocument 1.3 part 4 (OpenFormula), 6.10.5; the oldest part decides, three months catalyzed: common practice, no source",
  accuracy: "the day is exact, the shelf life is not: the label decides, and warmth shortens it",
  cautions: ["storage"],
  worked: { typed: [["2026-03-14", "", "2026-01-31"]], gives: 46142 },
  steps: ({ dates }) => ({ oldest: isoDate(oldest(dates)) }),
  run: ({ dates, months }) => as(useBy(oldest(dates), months)),
});

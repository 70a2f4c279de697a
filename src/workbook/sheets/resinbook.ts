import { cautionsOf } from "../../cautions";
import { resinbook } from "../../resin/resinbook";
import { catalyzedMonths } from "../../resin/settings";
import { bar } from "../bars";
import { ask, type Formula, formula } from "../formula";
import type { Kit } from "../kit";
import { Page } from "../page";
import { between, cellIn, type Ref, refTo, whole } from "../place";
import { type Columns, sheetTable } from "../sheettable";
import { ownReason } from "../verdict";
import { day, demoDay } from "./day";
import type { Shop } from "./shop";

export interface ResinBook {
  readonly page: Page;
  readonly now: Ref;
  /** Settings of My Shop that follow the book. */
  readonly follows: Readonly<Record<string, Ref>>;
  /** The day its oldest part was mixed, and the last day it is good. */
  readonly since: Ref;
  readonly until: Ref;
  /** The rows that RESINBOOK takes. */
  readonly runs: Ref;
}

/** Less resin than this counts as none: rounding error of the sums. */
const slack = "0.000000001";

/** What stands before a row: in the last row above that is not empty. */
const before = ({ volume, row: numbers }: Columns, row: number, right: number): Formula | string => {
  if (!row) return "0";
  const column = refTo(volume.sheet, volume.row, volume.column + right, row);
  const last = formula`MAX(${whole({ ...numbers, rows: row })})`;
  const found = formula`INDEX(${whole(column)},${last})`;
  return formula`IF(${last}=0,0,IF(${found}="",0,${found}))`;
};

/**
 * The books in built-in syntax: volume, dye rate and use-by after each row, from the row before. A row without a date, or that
 * takes more than there is, stops the book until it is put right or the tub is emptied.
 */
function kept(all: Columns, months: Ref) {
  const { date, added, dye, taken, volume, row: number } = all;
  return (row: number, column: number): Formula => {
    const stood = before(all, row, 0);
    const fluid = formula`${stood}+${added}`;
    const untouched = formula`${number}=""`;
    if (column === 0) {
      const left = formula`IF(${fluid}-${taken}<-${slack},"more than there is",MAX(0,${fluid}-${taken}))`;
      const entered = formula`IF(ISTEXT(${stood}),"waits for a row above",${left})`;
      return formula`IF(${untouched},"",IF(ISNUMBER(${date}),IF(${taken}="emptied",0,${entered}),"no date"))`;
    }
    const stands = refTo(volume.sheet, volume.row + row, volume.column);
    const gone = formula`IF(ISNUMBER(${stands}),${stands}<=${slack},TRUE)`;
    if (column === 1) return formula`IF(${gone},"",(${before(all, row, 1)}*${stood}+${dye})/(${fluid}))`;
    const fresh = formula`EDATE(INT(${date}),${months})`;
    const oldest = before(all, row, 2);
    return formula`IF(${gone},"",IF(${stood}=0,${fresh},IF(${added}>0,MIN(${oldest},${fresh}),${oldest})))`;
  };
}

/** Why a row of the book has no answer. */
const wrongWith = ({ date, row, volume }: Columns): Formula =>
  formula`IF(${row}="","",IF(ISNUMBER(${date}),IF(ISNUMBER(${volume}),"",${ownReason(formula`"more left than was there, or dye was added without resin, or a row above is wrong"`)}),"give this row a date"))`;

/** The ledger of the mixed resin. */
export function resinSheet(kit: Kit, shop: Shop, asOf: Ref): ResinBook {
  const page = new Page(
    "Resin Book",
    "The mixed resin, run by run: how much is in the tub, how strong its color is, and when its oldest part expires. Topping up never makes it younger.",
    [16, 12, 12, 14, 3, 14, 16, 16, 6, 30],
  );
  page.open("Resin Book");
  const summary = page.row;
  // Its own two settings: My Shop's resin follows this book, and a book that asked My Shop would follow itself.
  page.skip(4);
  const months = catalyzedMonths.name;
  const first = page.line({ label: "units", formula: formula`"${kit.system}"`, look: "words", note: "of this file" });
  const keeps = page.line({ label: months, formula: formula`${shop.holds(months)}`, format: "General", note: "My Shop" });
  const own = refTo(page.sheet.name, first.row, 0, keeps.row - first.row + 1, 2);
  page.skip();
  page.say(
    "First row: what is on hand today, with the date its oldest part was mixed. Then one row for each run: what was added, its dye, and all that left, drips included. To start over, write “emptied” under taken up.",
  );
  page.skip();
  const entry = (days: number, added: number, dye: number, taken: number | string) => ({
    date: demoDay + days,
    added: kit.of("fluid", added, 2),
    dye: kit.of("powder", dye, 1),
    taken: typeof taken === "number" ? kit.of("fluid", taken, 2) : taken,
  });
  const fluid = { unit: kit.unit("fluid") };
  const spend = { from: 0, to: 1e6 };
  const { of } = sheetTable(
    page,
    {
      date: { title: "date", input: { date: true }, format: day },
      added: { title: "added", ...fluid, input: spend },
      dye: { title: "dye added", unit: kit.unit("powder"), input: spend },
      taken: { title: "taken up", ...fluid, input: true, hint: "All that left, drips included; or the word emptied." },
      volume: {
        title: "on hand",
        ...fluid,
        format: "0.00",
        beside: [`dye, ${kit.unit("strength")}`, "use by"],
        spills: (all) => ask(resinbook, { runs: whole(between(all.date, all.taken)), shop: own }),
        instead: (all) => kept(all, shop.holds(months)),
      },
      row: { title: "row", look: "note" },
      wrong: { title: "problem", look: "alarm", each: wrongWith },
    },
    kit.demo
      ? [entry(-60, 1.5, 0.375, 0), entry(-52, 2, 0.5, 0.45), entry(-31, 0, 0, 0.5), entry(-10, 1, 0.25, 0.6), entry(-1, 1, 0.25, 0.35)]
      : [],
    { spare: kit.demo ? 20 : 25, name: "ResinTable" },
  );
  const strength = refTo(of.volume.sheet, of.volume.row, of.volume.column + 1, of.volume.rows);
  const useBy = refTo(of.volume.sheet, of.volume.row, of.volume.column + 2, of.volume.rows);
  for (let row = 0; row < of.volume.rows; row++) {
    const [date, added, dye, taken] = [of.date, of.added, of.dye, of.taken].map((ref) => cellIn(ref, row));
    const touched = formula`OR(LEN(${date})>0,SUM(${added},${dye},${taken})<>0,ISTEXT(${taken}))`;
    page.put(of.row.row + row, of.row.column, { formula: formula`IF(${touched},${row + 1},"")`, look: "note" });
    page.put(useBy.row + row, useBy.column, { look: "result", format: day });
    page.put(strength.row + row, strength.column, { look: "result", format: "0.000" });
  }
  const lastRow = formula`MAX(${whole(of.row)})`;
  const last = (ref: Ref): Formula =>
    formula`IF(${lastRow}=0,"",IF(ISNUMBER(INDEX(${whole(ref)},${lastRow})),INDEX(${whole(ref)},${lastRow}),""))`;
  const after = page.row;
  page.row = summary;
  const now = page.line({ label: "in the tub now", formula: last(of.volume), format: "0.00", look: "total", unit: kit.unit("fluid") });
  page.put(now.row, 3, {
    formula: formula`IF(${lastRow}=0,"",IF(ISNUMBER(${now}),"My Shop’s resin on hand, unless typed there",${ownReason(formula`"the last row has no answer: see its “problem”"`)}))`,
    look: "unit",
  });
  const rate = page.line({ label: "its dye rate", formula: last(strength), format: "0.000", unit: kit.unit("strength") });
  const until = page.line({ label: "use by", formula: last(useBy), format: day });
  // From the use-by, and so never younger than the book says, also at the end of a month.
  const since = page.line({
    label: "oldest part mixed",
    formula: formula`IF(ISNUMBER(${until}),EDATE(${until},-${shop.holds(months)}),"")`,
    format: day,
  });
  const isOld = (cell: Ref) => formula`IF(COUNT(${cell},${asOf})=2,${cell}<INT(${asOf}),FALSE)`;
  const state = formula`IF(ISNUMBER(${asOf}),IF(${isOld(until)},"expired: dispose of it as its safety data sheet says","still good on Today’s day, if not thick or stringy"),"type a day on Today to see whether it is still good")`;
  page.put(until.row, 3, { formula: formula`IF(ISNUMBER(${until}),${state},"")`, look: "unit" });
  const most = formula`MAX(0.01,MAX(${whole(of.volume)}))`;
  page.put(now.row, 7, { formula: bar(now, most), look: "bars" });
  page.put(until.row, 7, { formula: formula`IF(COUNT(${until},${asOf})=2,${bar(formula`(${until}-INT(${asOf}))`, 90)},"")`, look: "bars" });
  page.put(now.row, 9, { formula: formula`IF(ISNUMBER(${now}),"the tub, of the most it held here","")`, look: "unit" });
  page.put(until.row, 9, {
    formula: formula`IF(COUNT(${until},${asOf})=2,IF(${isOld(until)},"no day left",(${until}-INT(${asOf}))&" days left, of 90"),"")`,
    look: "unit",
  });
  page.alert("bad", until, isOld(until));
  page.alert("bad", useBy, isOld(useBy));
  page.alert("bad", between(of.date, of.taken), formula`LEN(${of.wrong})>0`);
  page.row = after;
  page.skip();
  page.cautions(cautionsOf(["storage", "resin"]));
  page.sheet.frozen = { rows: of.date.row, columns: 0 };
  page.sheet.print = { landscape: true, titleRow: of.date.row - 1 };
  return {
    page,
    now: cellIn(now, 0),
    since: cellIn(since, 0),
    until: cellIn(until, 0),
    follows: { "resin on hand": now, "resin dye rate": rate, "resin mixed on": since },
    runs: between(of.date, of.taken),
  };
}

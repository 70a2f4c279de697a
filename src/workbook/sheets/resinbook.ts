import { cautionsOf } from "../../cautions";
import { resinbook } from "../../resin/resinbook";
import { ask, type Formula, formula } from "../formula";
import type { Kit } from "../kit";
import { type Columns, Page } from "../page";
import { between, cellIn, type Ref, refTo, whole } from "../place";
import { day, demoDay } from "./day";
import type { Shop } from "./shop";

export interface ResinBook {
  readonly page: Page;
  readonly now: Ref;
  /** The rows that RESINBOOK takes. */
  readonly runs: Ref;
}

/** The books in built-in syntax: volume, dye rate and use-by after each row, from the row before. */
function kept({ date, added, dye, taken, volume }: Columns, months: Ref) {
  return (row: number, column: number): Formula => {
    const before = (right: number): Formula | string => {
      const cell = refTo(volume.sheet, volume.row + row - 1, volume.column + right);
      return row ? formula`IF(${cell}="",0,${cell})` : "0";
    };
    const fluid = formula`${before(0)}+${added}`;
    const left = formula`IF(${taken}="emptied",0,${fluid}-${taken})`;
    const untouched = formula`${date}=""`;
    if (column === 0) return formula`IF(${untouched},"",${left})`;
    const gone = formula`IF(${untouched},TRUE,${left}<=0.000000001)`;
    if (column === 1) return formula`IF(${gone},"",(${before(1)}*${before(0)}+${dye})/(${fluid}))`;
    const fresh = formula`EDATE(INT(${date}),${months})`;
    return formula`IF(${gone},"",IF(${before(0)}=0,${fresh},IF(${added}>0,MIN(${before(2)},${fresh}),${before(2)})))`;
  };
}

/** The ledger of the mixed resin. */
export function resinSheet(kit: Kit, shop: Shop, asOf: Ref): ResinBook {
  const page = new Page(
    "Resin Book",
    "The mixed resin, run by run: what stands in the tub, how strong its colour is, and until when its oldest part is good. Topping up never makes it younger.",
    [16, 12, 12, 14, 3, 14, 16, 16, 10],
  );
  page.open("Resin Book");
  const summary = page.row;
  page.skip(4);
  page.say(
    "First row: what stands there today, with the day its oldest part was mixed. Then a row a run: what was added, the dye with it, and all that left, drips included. Write “emptied” as taken up to start afresh.",
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
  const { of } = page.table(
    {
      date: { title: "date", input: { date: true }, format: day },
      added: { title: "added", ...fluid, input: spend },
      dye: { title: "dye added", unit: kit.unit("powder"), input: spend },
      taken: { title: "taken up", ...fluid, input: true, hint: "All that left, drips included; or the word emptied." },
      volume: {
        title: "stands there",
        ...fluid,
        format: "0.00",
        beside: [`dye, ${kit.unit("strength")}`, "use by"],
        spills: (all) => ask(resinbook, { runs: whole(between(all.date, all.taken)) }),
        instead: (all) => kept(all, shop.holds("catalysed months")),
      },
    },
    kit.demo
      ? [entry(-60, 1.5, 0.375, 0), entry(-52, 2, 0.5, 0.45), entry(-31, 0, 0, 0.5), entry(-10, 1, 0.25, 0.6), entry(-1, 1, 0.25, 0.35)]
      : [],
    { spare: kit.demo ? 20 : 25, name: "ResinTable" },
  );
  const strength = refTo(of.volume.sheet, of.volume.row, of.volume.column + 1, of.volume.rows);
  const useBy = refTo(of.volume.sheet, of.volume.row, of.volume.column + 2, of.volume.rows);
  for (let row = 0; row < of.volume.rows; row++) {
    page.put(useBy.row + row, useBy.column, { look: "result", format: day });
    page.put(strength.row + row, strength.column, { look: "result", format: "0.000" });
  }
  const last = (ref: Ref): Formula => formula`IF(COUNT(${whole(of.date)})=0,"",INDEX(${whole(ref)},COUNT(${whole(of.date)})))`;
  const after = page.row;
  page.row = summary;
  const now = page.line({ label: "in the tub now", formula: last(of.volume), format: "0.00", look: "total", unit: kit.unit("fluid") });
  page.put(now.row, 3, { value: "copy it to “resin on hand” on My Shop", look: "unit" });
  page.line({ label: "its dye rate", formula: last(strength), format: "0.000", unit: kit.unit("strength") });
  const until = page.line({ label: "use by", formula: last(useBy), format: day });
  const old = formula`${until}<INT(${asOf})`;
  const state = formula`IF(${asOf}="","give the day of the demo on Today: then it says whether it is still good",IF(${old},"expired: dispose of it as its safety data sheet says","good on the day of the demo, if it is neither thick nor stringy"))`;
  page.put(until.row, 3, { formula: formula`IF(ISNUMBER(${until}),${state},"")`, look: "unit" });
  page.alert("bad", until, formula`IF(ISNUMBER(${until}),${until}<INT(${asOf}),FALSE)`);
  page.alert("bad", useBy, formula`IF(ISNUMBER(${useBy}),${useBy}<INT(${asOf}),FALSE)`);
  page.row = after;
  page.skip();
  page.cautions(cautionsOf(["storage", "resin"]));
  page.sheet.frozen = { rows: of.date.row, columns: 1 };
  page.sheet.print = { titleRow: of.date.row - 1 };
  return { page, now: cellIn(now, 0), runs: between(of.date, of.taken) };
}

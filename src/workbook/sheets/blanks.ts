import { cautionsOf } from "../../cautions";
import { kinds } from "../demokinds";
import { formula } from "../formula";
import type { Kit } from "../kit";
import { Page } from "../page";
import { between, type Ref } from "../place";
import { sheetTable } from "../sheettable";
import { blanksColumns } from "./blankscolumns";
import { summaryLines } from "./blankssummary";
import { atEnd } from "./ovenblock";
import { plannedBlock } from "./plannedblock";
import type { RunLog } from "./runlog";
import type { Shop } from "./shop";
import { tellStrange, vesselOf } from "./vessel";
import type { Woods } from "./woods";

export interface Blanks {
  readonly page: Page;
  readonly of: Readonly<
    Record<
      | "kind"
      | "count"
      | "thickness"
      | "width"
      | "length"
      | "wood"
      | "dryWeight"
      | "color"
      | "volume"
      | "gravity"
      | "uptake"
      | "wrong"
      | "inPlan"
      | "bake"
      | "fullness",
      Ref
    >
  >;
  /** Kind, count, thickness, width, length, wood. */
  readonly pieces: Ref;
  /** What PLAN takes: those, the wood as weighed or named, color, and how full its pores get; of rows that are left out a count of 0. */
  readonly planned: Ref;
  /** Numbers of rows and of pieces on Blanks that are left out of the plan. */
  readonly leftOut: { readonly rows: Ref; readonly pieces: Ref };
  /** Minutes of each row that is planned, and the ends of their likely range. */
  readonly bakesOf: { readonly about: Ref; readonly short: Ref; readonly long: Ref };
  /** The shop as it bakes at the ends of the likely range. */
  readonly ends: { readonly short: Ref; readonly long: Ref };
}

/** Printed columns. */
const printed = 24;

/** Every kind of blank with what it will take. */
export function blanksSheet(kit: Kit, shop: Shop, woods: Woods, log: RunLog): Blanks {
  const page = new Page(
    "Blanks",
    "One row for each kind or each piece. Type in the pale cells on the left; the rest is worked out, and a row with a problem says why.",
    [
      16, 6.3, 10, 6.5, 7.6, 14.4, 10, 7.2, 9, 8.3, 1, 7, 9, 7.5, 7.1, 8.2, 11, 7, 18, 12, 10, 38, 27, 9, 8, 8, 8, 26, 9, 18, 3, 21, 8, 9,
      8, 8, 16, 8, 9, 8, 20, 10, 3, 20, 10,
    ],
    { landscape: true, columns: printed, two: { first: 17, repeated: 1 } },
  );
  page.open("Blanks");
  const summary = page.row;
  page.skip(6);
  const ends = {
    short: atEnd(page, kit, shop, { row: 1, column: beyond + 9 }, "short end"),
    long: atEnd(page, kit, shop, { row: 1, column: beyond + 12 }, "long end"),
  };
  const tub = vesselOf(page, kit, shop, beyond);
  const { of } = sheetTable(
    page,
    blanksColumns({ kit, shop, woods, log, ends, tub }),
    kit.demo
      ? kinds.map(({ label, count, thickness, width, length, species, condition, weight, dryWeight, color }) => ({
          kind: label,
          count,
          thickness: kit.of("length", thickness),
          width: kit.of("length", width),
          length: kit.of("length", length),
          wood: species,
          state: condition,
          weight,
          dryWeight,
          color,
        }))
      : [],
    { spare: kit.demo ? 9 : 25, name: "BlanksTable" },
  );
  // A kind, a wood or a problem may take two lines; where rows are filled, their words have made room.
  if (!kit.demo) for (let row = 0; row < of.kind.rows; row++) page.sheet.room.set(of.kind.row + row, 2);
  const planned = plannedBlock(page, of, beyond);
  const leftOut = summaryLines(page, summary, of, planned.count, kit);
  tellStrange(page, summary + 5, tub, kit);
  page.skip();
  page.cautions(cautionsOf(["dust", "wet wood", "resin", "oven"]));
  const row = between(of.kind, of.color);
  page.alert("attention", row, formula`LEFT(${of.wrong},6)="dry it"`);
  page.alert("bad", row, formula`LEN(${of.wrong})>0`);
  page.alert("attention", of.inPlan, formula`LEFT(${of.inPlan},4)="left"`);
  page.alert("good", of.grade, formula`${of.grade}="good"`);
  page.alert("attention", of.grade, formula`LEFT(${of.grade},3)="dry"`);
  page.sheet.frozen = { rows: of.kind.row, columns: 0 };
  page.sheet.print = { ...page.sheet.print, titleRow: of.kind.row - 1 };
  return {
    page,
    of,
    pieces: between(of.kind, of.wood),
    planned: planned.block,
    leftOut,
    ends,
    bakesOf: { about: planned.bake, short: of.short, long: of.long },
  };
}

/** First of the hidden columns that the plan reads, to the right of the table. */
const beyond = 31;

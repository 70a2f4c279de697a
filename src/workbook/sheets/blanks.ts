import { cautionsOf } from "../../cautions";
import { bake } from "../../cure/bake";
import { uptake } from "../../resin/uptake";
import { gravity } from "../../wood/gravity";
import { moisture } from "../../wood/moisture";
import { pieceGravity } from "../../wood/piecegravity";
import { suitability } from "../../wood/suitability";
import { voids } from "../../wood/voids";
import { ask, type Formula, formula } from "../formula";
import { kinds } from "../kinds";
import type { Kit } from "../kit";
import { type Columns, ownReason, Page } from "../page";
import { between, type Ref, whole } from "../place";
import { atEnd } from "./ovenblock";
import type { RunLog } from "./runlog";
import type { Shop } from "./shop";
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
      | "volume"
      | "gravity"
      | "uptake"
      | "wrong"
      | "bake"
      | "fullness",
      Ref
    >
  >;
  /** Kind, count, thickness, width, length, wood. */
  readonly pieces: Ref;
  /** What PLAN takes: those, the wood as weighed or named, no color, and how full its pores get. */
  readonly planned: Ref;
  /** The shop as it bakes at the ends of the likely range. */
  readonly ends: { readonly short: Ref; readonly long: Ref };
}

const states = ["sound", "spalted", "punky"];

/** Weighed and measured if it was, else by the table: no table knows burl or decayed wood. */
const gravityOf = ({ wood, named, dryWeight, volume }: Columns, woods: Woods): Formula => {
  const lookedUp = formula`IF(${named}="","no wood called "&${wood}&" is in the list on the sheet Woods",INDEX(${woods.gravity},MATCH(${named},${woods.names},0)))`;
  const tabled = ask(gravity, { species: wood }, lookedUp);
  const weighed = ask(pieceGravity, { weight: dryWeight, volume });
  return formula`IF(AND(${wood}="",${dryWeight}=""),"",IF(OR(${dryWeight}="",${volume}=""),${tabled},${weighed}))`;
};

/** Balsa of the lightest weighs about as little. */
const lightest = 0.08;

/** The slips of a bench in plain words, for whoever cannot rest on an error to read it. */
const wrongWith = (
  { kind, count, thickness, width, length, wood, named, weight, dryWeight, moisture, gravity }: Columns,
  shop: Shop,
): Formula =>
  formula`IF(AND(${kind}="",${wood}=""),"",IF(COUNT(${thickness},${width},${length})<3,"a size is missing, or is no plain number",IF(IF(ISNUMBER(${count}),OR(${count}<0,${count}<>INT(${count})),LEN(${count})>0),"count is not a whole number",IF(COUNT(${weight},${dryWeight})<(LEN(${weight})>0)+(LEN(${dryWeight})>0),"a weight is not a plain number: type 21, not 21 g",IF(${named}="","no such wood on the sheet Woods",IF(AND(LEN(${weight})>0,SUM(${dryWeight})<=0),"oven-dry is missing: weigh it dry",IF(AND(SUM(${weight})<=0,LEN(${dryWeight})>0),"its weight now is missing",IF(AND(COUNT(${weight},${dryWeight})=2,${weight}<${dryWeight}),"lighter than when dry: weigh again",IF(AND(COUNT(${weight},${dryWeight})=2,${weight}>1.3*${dryWeight}),"too wet to take resin: dry it first",IF(IF(ISNUMBER(${moisture}),${moisture}>${shop.holds("dry enough")},FALSE),"dry it first",IF(IF(ISNUMBER(${gravity}),${gravity}<${lightest},TRUE),"weight and sizes fit no wood: check",IF(MIN(${thickness},${width},${length})>${shop.holds("thickest")}*1.000000001,"too thick to bake by calculation",""))))))))))))`;

/** Columns that go to paper. */
const printed = 22;

/** Every kind of blank with what it will take. */
export function blanksSheet(kit: Kit, shop: Shop, woods: Woods, log: RunLog): Blanks {
  const page = new Page(
    "Blanks",
    "One row for each kind or each piece. Type in the pale cells on the left; the rest is worked out, and a row with a problem says why.",
    [
      19, 7, 10, 8, 8, 17, 10, 8, 10, 1, 7, 10, 9, 6, 7, 13, 7, 18, 10, 38, 27, 9, 8, 8, 8, 26, 9, 18, 3, 20, 10, 3, 20, 10, 3, 16, 7, 8, 8,
      8, 16, 4, 9,
    ],
    { landscape: true, columns: printed },
  );
  page.open("Blanks");
  const summary = page.row;
  page.skip(4);
  const length = kit.unit("length");
  const weight = formula`IF(${shop.holds("scale reads")}="","",${shop.holds("scale reads")})`;
  const each = { from: 0, to: 1e6 };
  const side = { from: kit.of("length", 0.01, 2), to: kit.of("length", 200) };
  const lengthUnit = { unit: length };
  const ends = {
    short: atEnd(page, kit, shop, { row: 1, column: printed + 7 }, "short end"),
    long: atEnd(page, kit, shop, { row: 1, column: printed + 10 }, "long end"),
  };
  const baked = ({ thickness, width, length, gravity }: Columns, block?: Ref) =>
    ask(bake, { thickness, width, length, gravity, ...(block ? { shop: block } : {}) });
  const { of } = page.table(
    {
      kind: { title: "kind", input: true, hint: "A name of your own: a kind of blank, or the number on one piece." },
      count: { title: "count", input: { from: 0, to: 1e6, whole: true } },
      thickness: { title: "thickness", ...lengthUnit, input: side },
      width: { title: "width", ...lengthUnit, input: side },
      length: { title: "length", ...lengthUnit, input: side },
      wood: { title: "wood", input: { list: woods.names }, hint: "A wood from the list on Woods." },
      state: { title: "state", input: { list: states, only: true } },
      weight: { title: "weight", unit: weight, format: "0.0", input: each, hint: "One piece, as it is now." },
      dryWeight: { title: "oven-dry", unit: weight, format: "0.0", input: each, hint: "The same piece, oven-dry." },
      volume: {
        title: "wood, each",
        unit: kit.unit("volume"),
        format: kit.by("0.00", "0.0"),
        each: ({ thickness, width, length }) =>
          formula`IF(COUNT(${thickness},${width},${length})<3,"",${thickness}*${width}*${length}/${kit.by(1, 1000)})`,
      },
      moisture: { title: "moisture", format: "0.0%", spills: (all) => ask(moisture, { weight: all.weight, dryWeight: all.dryWeight }) },
      gravity: { title: "gravity", format: "0.00", each: (all) => gravityOf(all, woods) },
      voids: { title: "voids", format: "0%", spills: (all) => ask(voids, { gravity: all.gravity, moisture: all.moisture }) },
      uptake: {
        title: "resin, each",
        unit: kit.unit("fluid"),
        format: "0.000",
        spills: (all) => ask(uptake, { solids: all.volume, gravity: all.gravity, fullness: all.fullness, moisture: all.moisture }),
      },
      likely: {
        title: "likely",
        look: "words",
        each: ({ uptake, spread }) =>
          formula`IF(AND(ISNUMBER(${uptake}),ISNUMBER(${spread})),TEXT(${uptake}*MAX(0,1-${spread}),"0.000")&" to "&TEXT(${uptake}*(1+${spread}),"0.000"),"")`,
      },
      all: {
        title: "resin, all",
        unit: kit.unit("fluid"),
        format: "0.00",
        each: (all) => formula`IF(AND(ISNUMBER(${all.uptake}),ISNUMBER(${all.count})),${all.uptake}*${all.count},"")`,
      },
      wrong: { title: "problem", look: "alarm", each: (all) => ownReason(wrongWith(all, shop)) },
      grade: {
        title: "grade",
        beside: ["reason"],
        look: "words",
        spills: (all) => ask(suitability, { wood: all.judged, thickness: all.thickness, moisture: all.moisture, condition: all.state }),
      },
      bake: {
        title: "bake",
        look: "words",
        each: ({ minutes, short, long }) =>
          formula`IF(ISNUMBER(${minutes}),"about "&TEXT(${minutes},"0")&" min"&IF(ISNUMBER(${short}),", likely "&TEXT(${short},"0")&IF(ISNUMBER(${long})," to "&TEXT(${long},"0")," or more"),""),"")`,
      },
      fullness: {
        title: "fullness",
        format: "0%",
        hint: "How full the pores get: the average of this wood's own runs in the Run Log, or My Shop's if there are none.",
        each: ({ named }) => log.fullnessOf(named),
      },
      minutes: { title: "min", look: "note", format: "0", spills: (all) => baked(all) },
      short: { title: "shortest", look: "note", format: "0", spills: (all) => baked(all, ends.short) },
      long: { title: "longest", look: "note", format: "0", spills: (all) => baked(all, ends.long) },
      // One truth for the row: the grade goes by the very gravity that the voids go by, and the name only says how the heartwood takes resin.
      judged: {
        title: "graded as",
        look: "note",
        each: ({ wood, gravity }) => formula`IF(ISNUMBER(${gravity}),IF(${wood}="",${gravity},${wood}&", "&ROUND(${gravity},9)),${wood})`,
      },
      spread: {
        title: "spread",
        look: "note",
        format: "0%",
        each: ({ named }) => log.spreadOf(named),
      },
      // However a wood is spelled, it is one wood here and in the Run Log.
      named: { title: "wood, as listed", look: "note", each: ({ wood }) => woods.named(wood) },
    },
    kit.demo
      ? kinds.map(({ label, count, thickness, width, length, species, condition, weight, dryWeight }) => ({
          kind: label,
          count,
          thickness: kit.of("length", thickness),
          width: kit.of("length", width),
          length: kit.of("length", length),
          wood: species,
          state: condition,
          weight,
          dryWeight,
        }))
      : [],
    { spare: kit.demo ? 9 : 25, name: "BlanksTable" },
  );
  const planned = plannedRows(page, of);
  summaryLines(page, summary, of, kit);
  page.skip();
  page.cautions(cautionsOf(["dust", "wet wood", "resin", "oven"]));
  const row = between(of.kind, of.dryWeight);
  page.alert("attention", between(of.kind, of.dryWeight), formula`LEFT(${of.wrong},6)="dry it"`);
  page.alert("bad", row, formula`LEN(${of.wrong})>0`);
  page.alert("good", of.grade, formula`${of.grade}="good"`);
  page.alert("attention", of.grade, formula`LEFT(${of.grade},3)="dry"`);
  page.sheet.frozen = { rows: of.kind.row, columns: 1 };
  page.sheet.print = { ...page.sheet.print, titleRow: of.kind.row - 1 };
  return { page, of, pieces: between(of.kind, of.wood), planned, ends };
}

/** The rows as PLAN takes them, beside the table: a piece that was weighed goes by its own gravity, its wood by its own fullness. */
function plannedRows(page: Page, of: Columns): Ref {
  const after = page.row;
  page.row = of.kind.row - 2;
  const as = (from: Ref) => () => formula`IF(${from}="","",${from})`;
  const note = { look: "note" } as const;
  const { of: own } = page.table(
    {
      kind: { title: "planned", ...note, each: as(of.kind) },
      count: { title: "count", ...note, each: as(of.count) },
      thickness: { title: "thickness", ...note, each: as(of.thickness) },
      width: { title: "width", ...note, each: as(of.width) },
      length: { title: "length", ...note, each: as(of.length) },
      wood: {
        title: "wood",
        ...note,
        each: () => formula`IF(IF(${of.named}="",FALSE,ISNUMBER(${of.gravity})),${of.gravity},IF(${of.wood}="","",${of.wood}))`,
      },
      color: { title: "", ...note },
      fullness: { title: "fullness", ...note, format: "0%", each: as(of.fullness) },
    },
    [],
    { spare: of.kind.rows, column: printed + 13 },
  );
  page.row = after;
  return between(own.kind, own.fullness);
}

/** Rows with an error are passed over: it matches no condition. */
function summaryLines(page: Page, row: number, of: Columns, kit: Kit): void {
  const all = (ref: Ref) => whole(ref);
  const lines: [string, Formula, string, string][] = [
    ["pieces", formula`SUM(${all(of.count)})`, "0", ""],
    ["resin taken up", formula`SUMIF(${all(of.all)},">0")`, "0.00", kit.unit("fluid")],
    ["rows to problem", formula`SUMPRODUCT((LEN(${all(of.wrong)})>0)*1)`, "0", ""],
  ];
  lines.forEach(([label, made, format, unit], i) => {
    page.put(row + i, 0, { value: label, look: "label" });
    page.put(row + i, 1, { formula: made, format, look: "total" });
    if (unit) page.put(row + i, 2, { value: unit, look: "unit" });
  });
}

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
import type { RunLog } from "./runlog";
import type { Shop } from "./shop";
import type { Woods } from "./woods";

export interface Blanks {
  readonly page: Page;
  readonly of: Readonly<
    Record<"kind" | "count" | "thickness" | "width" | "length" | "wood" | "dryWeight" | "volume" | "gravity" | "uptake" | "wrong", Ref>
  >;
  /** What PLAN takes: kind, count, thickness, width, length, wood. */
  readonly pieces: Ref;
}

const states = ["sound", "spalted", "punky"];

/** Weighed and measured if it was, else by the table: no table knows burl or decayed wood. */
const gravityOf = ({ wood, dryWeight, volume }: Columns, woods: Woods): Formula => {
  const lookedUp = formula`IF(ISNA(MATCH(${wood},${woods.names},0)),"no wood called "&${wood}&" is in the list on the sheet Woods",INDEX(${woods.gravity},MATCH(${wood},${woods.names},0)))`;
  const tabled = ask(gravity, { species: wood }, lookedUp);
  const weighed = ask(pieceGravity, { weight: dryWeight, volume });
  return formula`IF(AND(${wood}="",${dryWeight}=""),"",IF(OR(${dryWeight}="",${volume}=""),${tabled},${weighed}))`;
};

/** Balsa of the lightest weighs about as little. */
const lightest = 0.08;

/** The slips of a bench in plain words, for whoever cannot rest on an error to read it. */
const wrongWith = (
  { kind, count, thickness, width, length, wood, weight, dryWeight, moisture, gravity }: Columns,
  woods: Woods,
  shop: Shop,
): Formula =>
  formula`IF(AND(${kind}="",${wood}=""),"",IF(COUNT(${thickness},${width},${length})<3,"a size is missing, or is no plain number",IF(IF(ISNUMBER(${count}),OR(${count}<0,${count}<>INT(${count})),LEN(${count})>0),"count is not a whole number",IF(COUNT(${weight},${dryWeight})<(LEN(${weight})>0)+(LEN(${dryWeight})>0),"a weight is not a plain number: type 21, not 21 g",IF(ISNA(MATCH(${wood},${woods.names},0)),"no such wood on the sheet Woods",IF(AND(LEN(${weight})>0,SUM(${dryWeight})<=0),"oven-dry is missing: weigh it dry",IF(AND(SUM(${weight})<=0,LEN(${dryWeight})>0),"its weight now is missing",IF(AND(COUNT(${weight},${dryWeight})=2,${weight}<${dryWeight}),"lighter than when dry: weigh again",IF(AND(COUNT(${weight},${dryWeight})=2,${weight}>1.3*${dryWeight}),"too wet to take resin: dry it first",IF(IF(ISNUMBER(${moisture}),${moisture}>${shop.holds("dry enough")},FALSE),"dry it first",IF(IF(ISNUMBER(${gravity}),${gravity}<${lightest},TRUE),"weight and sizes fit no wood: check",IF(MIN(${thickness},${width},${length})>${shop.holds("thickest")}*1.000000001,"too thick to bake by calculation",""))))))))))))`;

/** Every kind of blank with what it will take. */
export function blanksSheet(kit: Kit, shop: Shop, woods: Woods, log: RunLog): Blanks {
  const page = new Page(
    "Blanks",
    "One row for each kind or each piece. Type in the pale cells on the left; the rest is worked out, and a row with a problem says why.",
    [22, 7, 10, 8, 8, 20, 10, 8, 10, 1, 7, 10, 9, 7, 7, 7, 6, 18, 10, 38, 9],
    { landscape: true },
  );
  page.open("Blanks");
  const summary = page.row;
  page.skip(4);
  const length = kit.unit("length");
  const weight = formula`IF(${shop.holds("scale reads")}="","",${shop.holds("scale reads")})`;
  const each = { from: 0, to: 1e6 };
  const side = { from: kit.of("length", 0.01, 2), to: kit.of("length", 200) };
  const lengthUnit = { unit: length };
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
        spills: (all) => ask(uptake, { solids: all.volume, gravity: all.gravity, moisture: all.moisture, fullness: all.fullness }),
      },
      all: {
        title: "resin, all",
        unit: kit.unit("fluid"),
        format: "0.00",
        each: (all) => formula`IF(AND(ISNUMBER(${all.uptake}),ISNUMBER(${all.count})),${all.uptake}*${all.count},"")`,
      },
      bake: {
        title: "bake",
        unit: "min",
        format: "0",
        spills: (all) => ask(bake, { thickness: all.thickness, width: all.width, length: all.length, gravity: all.gravity }),
      },
      wrong: { title: "problem", look: "alarm", each: (all) => ownReason(wrongWith(all, woods, shop)) },
      grade: {
        title: "grade",
        beside: ["reason"],
        look: "words",
        spills: (all) => ask(suitability, { wood: all.wood, thickness: all.thickness, moisture: all.moisture, condition: all.state }),
      },
      fullness: {
        title: "fullness",
        format: "0%",
        hint: "How full the pores get: the mean of this wood's own runs in the Run Log, else My Shop's.",
        each: ({ wood }) => log.fullnessOf(wood),
      },
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
  return { page, of, pieces: between(of.kind, of.wood) };
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

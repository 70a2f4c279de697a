import { cautionsOf } from "../../cautions";
import { bakeloss } from "../../resin/bakeloss";
import { fullness } from "../../resin/fullness";
import { weightgain } from "../../resin/weightgain";
import { bar } from "../bars";
import { type DemoRun, demoRuns } from "../demoruns";
import { ask, type Formula, formula, given } from "../formula";
import type { Kit } from "../kit";
import { Page } from "../page";
import { between, type Ref, refTo, whole } from "../place";
import { type Columns, sheetTable } from "../sheettable";
import { day, demoDay } from "./day";
import type { Shop } from "./shop";
import type { Woods } from "./woods";

const cubicInch = 16.387064;
/** A column that is not printed. */
const beyond = 28;
const usualColumn = 19;

const gainOf = ({ before, cured }: Columns) => ask(weightgain, { before, cured });
const fullnessOf = ({ before, drained, volume, gravity }: Columns) => ask(fullness, { before, drained, solids: volume, gravity });
const lossOf = ({ before, drained, cured }: Columns) => ask(bakeloss, { before, drained, cured });

export interface RunLog {
  readonly page: Page;
  /** How full the pores of a wood get: the mean of its own runs, else what My Shop has. */
  readonly fullnessOf: (wood: Ref) => Formula;
  /** How far a run of it may be off, either way: its own spread from three weighings on, else what My Shop has. */
  readonly spreadOf: (wood: Ref) => Formula;
}

/** Student's t for nine in ten, both sides, at 2 to 10 degrees of freedom and more. */
const students = [2.92, 2.353, 2.132, 2.015, 1.943, 1.895, 1.86, 1.833, 1.812];

/** One row a run, and what is usual for each wood: what makes the next run better. */
export function logSheet(kit: Kit, shop: Shop, woods: Woods): RunLog {
  const page = new Page(
    "Run Log",
    "One row for each run. Three weighings show how full the pores got and what the oven took; Blanks uses it.",
    [12, 17, 8, 8, 9, 8, 9, 9, 8, 9, 7, 10, 7, 22, 1, 7, 10, 11, 1, 17, 1, 6, 7, 10, 11, 9, 20, 3, 14, 18, 3, 18],
    { landscape: true, columns: 27, two: { first: 14, repeated: 2 } },
  );
  page.open("Run Log");
  const weight = formula`IF(${shop.holds("scale reads")}="","",${shop.holds("scale reads")})`;
  const ounce = { from: 0, to: 1e6 };
  const top = page.row;
  const shown = ([days, wood, pieces, volume, gravity, before, full, lost, bubbled, result]: DemoRun) => {
    const resin = volume * cubicInch * (1 - gravity / 1.54) * full * 1.03;
    return {
      date: demoDay + days,
      wood,
      pieces,
      before,
      drained: Number((before + resin).toFixed(1)),
      cured: Number((before + resin * (1 - lost)).toFixed(1)),
      volume: kit.of("volume", volume, 0),
      gravity,
      gauge: kit.of("pressure", 29, 1),
      bubbled,
      soak: 8,
      dye: kit.of("strength", 0.25, 1),
      oven: kit.of("temperature", 200, 0),
      result,
    };
  };
  const { of } = sheetTable(
    page,
    {
      date: { title: "date", input: { date: true }, format: day },
      wood: { title: "wood", input: { list: woods.names } },
      pieces: { title: "pieces", input: { from: 1, to: 1e6, whole: true } },
      before: { title: "dry", unit: weight, input: ounce, format: "0.0", hint: "All pieces of the run, oven-dry, before they went in." },
      drained: { title: "drained", unit: weight, input: ounce, format: "0.0", hint: "The same pieces drained, not yet baked." },
      cured: { title: "cured", unit: weight, input: ounce, format: "0.0", hint: "The same pieces baked and cool." },
      volume: { title: "volume", unit: kit.unit("volume"), input: ounce },
      gravity: { title: "gravity", input: { from: 0.05, to: 1.54 } },
      gauge: { title: "gauge", unit: kit.unit("pressure"), input: { from: 0, to: kit.of("pressure", 40) } },
      bubbled: { title: "bubbled", unit: "min", input: { from: 0, to: 14400 }, hint: "Minutes until the bubbling stopped." },
      soak: { title: "soak", unit: "h", input: { from: 0, to: 2400 } },
      dye: { title: "dye", unit: kit.unit("strength"), input: { from: 0, to: kit.of("strength", 96) } },
      oven: { title: "oven", unit: kit.unit("temperature"), input: { from: kit.of("temperature", 100), to: kit.of("temperature", 300) } },
      result: { title: "result", input: true },
      gain: {
        title: "gain",
        format: "0%",
        spills: gainOf,
        instead: (all) => () => given([all.before, all.cured], gainOf(all)),
      },
      full: {
        title: "fullness",
        format: "0%",
        spills: fullnessOf,
        instead: (all) => () => given([all.before, all.drained, all.volume, all.gravity], fullnessOf(all)),
      },
      lost: {
        title: "bake loss",
        format: "0%",
        spills: lossOf,
        instead: (all) => () => given([all.before, all.drained, all.cured], lossOf(all)),
      },
    },
    kit.demo ? demoRuns.map(shown) : [],
    { spare: kit.demo ? 22 : 30, name: "RunTable" },
  );
  const [dry, drained, cured] = [of.before, of.drained, of.cured];
  const swapped = formula`OR(AND(COUNT(${dry},${drained})=2,${drained}<${dry}),AND(COUNT(${dry},${cured})=2,${cured}<${dry}),AND(COUNT(${drained},${cured})=2,${cured}>${drained}))`;
  page.alert("bad", between(dry, cured), swapped);
  const { row } = page;
  page.row = top;
  const { of: squared } = sheetTable(
    page,
    {
      full: { title: "fullness squared", look: "note", each: () => formula`IF(ISNUMBER(${of.full}),${of.full}^2,"")` },
      wood: {
        title: "wood, as listed",
        look: "note",
        each: () => formula`IF(${woods.named(of.wood)}="",${of.wood}&"",${woods.named(of.wood)})`,
      },
    },
    [],
    { spare: of.full.rows, column: beyond },
  );
  page.row = top;
  // However a wood is spelled, its runs are those of one wood.
  const { wood: woodOf } = squared;
  /** How far the next run of a wood may be off the mean of three or more, nine times in ten. */
  const spread = (wood: Ref, full: Ref) => {
    const many = formula`COUNTIFS(${whole(woodOf)},${wood},${whole(of.full)},">0")`;
    const variance = formula`MAX(0,SUMIFS(${whole(squared.full)},${whole(woodOf)},${wood})-${many}*${full}^2)/(${many}-1)`;
    return formula`IF(OR(${wood}="",ISNUMBER(${full})=FALSE),"",IF(${many}<3,"",CHOOSE(MIN(${students.length},${many}-2),${students.join(",")})*SQRT(${variance}*(1+1/${many}))/${full}))`;
  };
  const usualWoods = kit.demo ? [...new Set(demoRuns.map(([, wood]) => wood))] : [];
  const usualRows = usualWoods.length + (kit.demo ? 5 : 10);
  const asked = refTo(page.sheet.name, top + 2, usualColumn, usualRows);
  page.row = top;
  const { of: heard } = sheetTable(page, { wood: { title: "usual for, as listed", look: "note", each: () => woods.named(asked) } }, [], {
    spare: usualRows,
    column: beyond + 3,
  });
  page.row = top;
  const usual = (of2: Ref, wood: Ref) =>
    formula`IF(${wood}="","",IF(COUNTIFS(${whole(woodOf)},${wood},${whole(of2)},">0")=0,"",AVERAGEIFS(${whole(of2)},${whole(woodOf)},${wood},${whole(of2)},">0")))`;
  const { of: usually } = sheetTable(
    page,
    {
      wood: { title: "usual for", input: { list: woods.names } },
      runs: { title: "runs", format: "0", each: () => formula`IF(${heard.wood}="","",COUNTIF(${whole(woodOf)},${heard.wood}))` },
      gain: { title: "gain", format: "0%", each: () => usual(of.gain, heard.wood) },
      full: { title: "fullness", format: "0%", each: () => usual(of.full, heard.wood) },
      lost: { title: "bake loss", format: "0%", each: () => usual(of.lost, heard.wood) },
      spread: { title: "spread", format: "0%", each: ({ full }) => spread(heard.wood, full) },
      bars: { title: "fullness, 0 to 100 %", look: "bars", each: ({ full }) => bar(full, 1) },
    },
    usualWoods.map((wood) => ({ wood })),
    { spare: usualRows - usualWoods.length, column: usualColumn },
  );
  page.row = row;
  page.skip();
  page.say(
    "“Usual” is the average of a wood's own runs. Blanks uses it, because no calculation can know it beforehand. After three weighings of a wood its own spread is used too: 9 runs in 10 lie in it. Weights in red are in the wrong order: dry is the lightest, drained the heaviest. A dash or an error does not count: check weights, volume and gravity.",
  );
  page.skip();
  page.cautions(cautionsOf(["resin", "wet wood", "oven", "dust"]));
  page.sheet.frozen = { rows: of.date.row, columns: 0 };
  page.sheet.print = { ...page.sheet.print, titleRow: of.date.row - 1 };
  const usualFullness = (wood: Ref): Formula => {
    const own = formula`${whole(woodOf)},${wood},${whole(of.full)},">0"`;
    return formula`IF(${wood}="","",IF(COUNTIFS(${own})=0,${shop.holds("fullness")},AVERAGEIFS(${whole(of.full)},${own})))`;
  };
  const usualSpread = (wood: Ref): Formula => {
    const own = formula`INDEX(${whole(usually.spread)},MATCH(${wood},${whole(heard.wood)},0))`;
    const shops = formula`${shop.holds("fullness spread")}`;
    return formula`IF(${wood}="","",IFERROR(IF(ISNUMBER(${own}),${own},${shops}),${shops}))`;
  };
  return { page, fullnessOf: usualFullness, spreadOf: usualSpread };
}

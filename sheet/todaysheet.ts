import { cautions } from "../src/cautions";
import { ink, input, paper, quiet, teal, tealPale, warn, warnPale } from "./colours";
import { type Book, type Draft, widths } from "./data";
import { settingCell } from "./shopsheet";

export const todaySheet = "Today";

interface Line {
  /** By which other lines' formulas call its value: {fluid}. */
  readonly id?: string;
  readonly label: string;
  readonly typed?: string | number;
  readonly formula?: string;
  readonly unit?: readonly [us: string, si: string] | string;
  readonly note?: string;
  readonly format?: string;
}

interface Stage {
  readonly title: string;
  readonly caution?: string;
  readonly lines: readonly Line[];
}

const inches = ["in", "mm"] as const;
const quarts = ["qt", "L"] as const;
const cubic = ["in³", "cm³"] as const;
const gauge = ["inHg", "kPa"] as const;
const degrees = ["°F", "°C"] as const;
const scale = settingCell("scale reads");

/** One run from choosing the wood to the cured pieces, in the order of the work. */
const stages: readonly Stage[] = [
  {
    title: "Choose and dry",
    caution: cautions.dust,
    lines: [
      { id: "wood", label: "wood", typed: "silver maple" },
      { id: "thick", label: "thickness", typed: 0.75, unit: inches },
      { id: "wide", label: "width", typed: 0.75, unit: inches },
      { id: "long", label: "length", typed: 5, unit: inches },
      { id: "count", label: "pieces", typed: 30 },
      { id: "gravity", label: "specific gravity, oven-dry", formula: "=PORE.GRAVITY({wood})" },
      { id: "own", label: "specific gravity of one piece weighed", formula: '=PORE.PIECEGRAVITY("21.9 g",{thick}*{wide}*{long},0,MyShop)' },
      { label: "void share", formula: "=PORE.VOIDS({gravity})" },
      {
        label: "worth treating, punky",
        formula: '=INDEX(PORE.SUITABILITY({wood},{thick},,"punky",MyShop),1,1)',
        note: '=INDEX(PORE.SUITABILITY({wood},{thick},,"punky",MyShop),1,2)',
      },
      {
        label: "and a white oak block, 2 1/2 in thick",
        formula: '=INDEX(PORE.SUITABILITY("white oak","2 1/2 in",,,MyShop),1,1)',
        note: '=INDEX(PORE.SUITABILITY("white oak","2 1/2 in",,,MyShop),1,2)',
      },
      {
        id: "air",
        label: "moisture wood takes from the shop's air",
        formula: '=PORE.EMC("68 °F","45 %",MyShop)',
        note: "at 68 °F and 45 %",
      },
      { id: "w1", label: "five pieces on the scale", typed: 118.2, unit: "g", note: "all five together: the scale is too coarse for one" },
      { id: "w2", label: "two hours later", typed: 110.4, unit: "g" },
      { id: "w3", label: "and again", typed: 109.6, unit: "g" },
      { id: "w4", label: "and again", typed: 109.55, unit: "g" },
      { id: "isdry", label: "are they dry?", formula: "=PORE.ISDRY({w1}:{w4},,MyShop)" },
      { id: "wet", label: "moisture they had", formula: "=PORE.MOISTURE({w1},{w4})" },
      { label: "oven-dry weight, from that", formula: "=PORE.DRYWEIGHT({w1},{wet},MyShop)", unit: "g" },
      { label: "weight at which 5 % would be left", formula: '=PORE.STOPWEIGHT({w1},{wet},"5 %",MyShop)', unit: "g" },
    ],
  },
  {
    title: "Chamber",
    caution: cautions.chamber,
    lines: [
      { id: "across", label: "chamber inside", typed: 6, unit: inches },
      { id: "high", label: "its height", typed: 12, unit: inches },
      { label: "pieces in one load, at most", formula: "=PORE.PERLOAD({across},{high},{thick},{wide},{long},{gravity},MyShop)" },
      { id: "way", label: "how they go in", formula: "=INDEX({arrange},1,1)" },
      { label: "layers", formula: "=INDEX({arrange},1,2)" },
      { id: "stack", label: "height of the stack", formula: "=INDEX({arrange},1,3)", unit: inches, format: "0.00" },
      { label: "fluid to pour, ballast and all", formula: "=INDEX({arrange},1,4)", unit: quarts, format: "0.00" },
      { id: "solids", label: "wood in it", formula: '={count}*{thick}*{wide}*{long}/IF({units}="SI",1000,1)', unit: cubic, format: "0.0" },
      { id: "uptake", label: "resin the wood will take", formula: "=PORE.UPTAKE({solids},{gravity},,,MyShop)", unit: quarts },
      {
        id: "fluid",
        label: "fluid to pour over the wood alone",
        formula: "=PORE.FILL({across},{stack},{solids},{uptake},MyShop)",
        unit: quarts,
      },
      { label: "it will stand at", formula: "=PORE.FLUIDLEVEL({across},{fluid},{solids},MyShop)", unit: inches },
      { label: "free height above it, for the foam", formula: "=PORE.HEADROOM({across},{high},{fluid},{solids},MyShop)", unit: inches },
      { id: "load", label: "the load weighs, oven-dry", typed: 690, unit: "g" },
      { label: "ballast that holds it under", formula: "=PORE.BALLAST({solids},{load},,MyShop)", unit: "g", note: cautions.ballast },
    ],
  },
  {
    title: "Vacuum",
    caution: cautions.lid,
    lines: [
      { id: "alt", label: "altitude", typed: 1200, unit: ["ft", "m"] },
      { label: "air pressure here", formula: "=PORE.BAROMETER({alt},MyShop)", unit: gauge },
      { label: "deepest the gauge will go", formula: "=PORE.FULLVACUUM({alt},MyShop)", unit: gauge },
      { id: "gauge", label: "the gauge reads", typed: 27.5, unit: gauge },
      { label: "share of the air out of the pores", formula: "=PORE.AIROUT({gauge},{alt},MyShop)" },
      { label: "water boils in there at", formula: "=PORE.WATERBOILS({gauge},{alt},MyShop)", unit: degrees, note: cautions.pump },
      { label: "minutes for a 3 ft³/min pump to get there", formula: '=PORE.PUMPDOWN("6 qt","3 cfm",{gauge},{alt},MyShop)', unit: "min" },
      {
        id: "lid",
        label: "a flat acrylic lid 3/4 in thick",
        formula: '=IFERROR(INDEX(PORE.LIDLOAD({across},"3/4 in",,{alt},MyShop),1,1),"refused: do not pump")',
        note: "A screen that can only say no: it certifies nothing.",
      },
    ],
  },
  {
    title: "Resin and dye",
    caution: cautions.resin,
    lines: [
      {
        label: "left by the resin book after two runs",
        formula: '=INDEX(PORE.RESINBOOK({"2026-02-20",1.5,0.375,0.7;"2026-03-07",0.25,0.0625,0.55},MyShop),2,1)',
        unit: quarts,
        note: "date, added, dye added, taken up: a row a run",
      },
      { id: "hand", label: "mixed resin on hand", typed: 0.5, unit: quarts },
      { id: "mix", label: "to mix", formula: "=INDEX(PORE.MIX({fluid},{hand},MyShop),1,1)", unit: quarts },
      { label: "packets of catalyst", formula: "=INDEX(PORE.MIX({fluid},{hand},MyShop),1,2)" },
      { label: "left over", formula: "=INDEX(PORE.MIX({fluid},{hand},MyShop),1,3)", unit: quarts, format: "0.00" },
      { label: "dye for all of it, afresh", formula: "=PORE.DYE({hand}+{mix},,MyShop)", unit: ["tsp", "mL"] },
      {
        id: "topup",
        label: "dye to add, the rest being half as strong",
        formula: "=PORE.DYETOPUP({hand},0.125,{mix},,MyShop)",
        unit: ["tsp", "mL"],
      },
      { label: "in kitchen spoons", formula: "=PORE.SPOONS({topup},MyShop)" },
      { id: "first", label: "the rest was mixed on", typed: "2026-02-20", format: "yyyy-mm-dd" },
      { id: "second", label: "and today is", typed: "2026-03-14", format: "yyyy-mm-dd" },
      { label: "what is mixed today alone is good until", formula: "=PORE.EXPIRY({second},,MyShop)" },
      { label: "topped up, all of it until", formula: "=PORE.OLDESTUSEBY({first}:{second},,MyShop)", note: cautions.storage },
    ],
  },
  {
    title: "Oven",
    caution: cautions.oven,
    lines: [
      { id: "bake", label: "bake", formula: "=PORE.BAKE({thick},{wide},{long},{gravity},MyShop)", unit: "min" },
      { label: "core after half of that", formula: "=PORE.CORETEMP({bake}/2,{thick},{wide},{long},{gravity},MyShop)", unit: degrees },
      { label: "cool before weighing", formula: "=PORE.COOLDOWN({thick},{wide},{long},{gravity},,MyShop)", unit: "min" },
    ],
  },
  {
    title: "What really happened",
    lines: [
      { id: "drained", label: "drained, before the oven", typed: 1120, unit: "g" },
      { id: "cured", label: "cured and cool", typed: 1085, unit: "g" },
      { label: "weight gain", formula: "=PORE.WEIGHTGAIN({load},{cured})" },
      { label: "fullness, for My Shop", formula: "=PORE.FULLNESS({load},{drained},{solids},{gravity},,MyShop)" },
      { label: "resin lost in the oven", formula: "=PORE.BAKELOSS({load},{drained},{cured})" },
    ],
  },
];

/** Cells that are meant to be errors: rest on one to read its message. */
const wrong: readonly Line[] = [
  {
    label: "a gauge deeper than the air here",
    formula: "=PORE.AIROUT(31,{alt},MyShop)",
    note: "The dial, the unit or the altitude is off.",
  },
  { label: "wood lighter than when dry", formula: "=PORE.MOISTURE({w4},{w1})", note: "One of the two weighings is wrong." },
  {
    label: "two hundred pieces at once",
    formula: "=PORE.ARRANGE({across},{high},{thick},{wide},{long},200,{gravity},MyShop)",
    note: "Fewer will.",
  },
  { label: "a lid of 1/4 in", formula: '=INDEX(PORE.LIDLOAD({across},"1/4 in",,,MyShop),1,1)', note: "Do not pump." },
  {
    label: "resin twice as strong as wanted",
    formula: "=PORE.DYETOPUP(1,0.5,0.25,0.25,MyShop)",
    note: "Clear fluid brings it down: the message says how much.",
  },
  { label: "a length with a comma", formula: '=PORE.BAKE("1,5 in",,,,MyShop)', note: "It can be read two ways." },
];

const first = 4;
/** Every row of the sheet: a stage's title, its caution, its lines. */
const rows: readonly (Line | { readonly title: string } | { readonly caution: string })[] = [
  ...stages.flatMap(({ title, caution, lines }) => [{ title }, ...(caution ? [{ caution }] : []), ...lines]),
  { title: "What it says when something is wrong" },
  ...wrong,
];

const rowOf = new Map(rows.flatMap((row, i) => ("id" in row && row.id ? [[row.id, first + i] as const] : [])));
const arrange = "PORE.ARRANGE({across},{high},{thick},{wide},{long},{count},{gravity},MyShop)";

/** A formula with its lines' names replaced by their cells. */
function placed(formula: string): string {
  return formula.replace("{arrange}", arrange).replace(/\{([a-z]\w*)\}/g, (_, id: string) => {
    if (id === "units") return settingCell("units");
    const row = rowOf.get(id);
    if (row === undefined) throw new Error(`${todaySheet} has no line called ${id}`);
    return `B${row}`;
  });
}

const unitOf = (unit: Line["unit"]): string => {
  if (unit === "g") return `=IF(${scale}="","g",${scale})`;
  return typeof unit === "string" ? unit : `=IF(${settingCell("units")}="SI","${unit?.[1]}","${unit?.[0]}")`;
};

function addLine(draft: Draft, row: number, line: Line, isWrong: boolean): void {
  const result = isWrong ? { fillColor: warnPale, textColor: warn } : { fillColor: tealPale, textColor: ink };
  draft.put(`A${row}`, line.label, { style: { textColor: ink } });
  if (line.typed !== undefined)
    draft.put(`B${row}`, line.typed, { style: { textColor: input, fillColor: paper, align: "right" }, format: line.format });
  if (line.formula) draft.put(`B${row}`, placed(line.formula), { style: { ...result, align: "right" }, format: line.format });
  if (line.unit) draft.put(`C${row}`, unitOf(line.unit), { style: { textColor: quiet } });
  if (line.note) draft.put(`D${row}`, placed(line.note), { style: { textColor: quiet, wrapping: "wrap" } });
}

/** The cells of the last block, which show errors on purpose. */
export const wrongCells: readonly string[] = wrong.map((_, i) => `B${first + rows.length - wrong.length + i}`);
export const cellOf = (id: string): string => `B${rowOf.get(id)}`;

export function addTodaySheet(book: Book): void {
  const layout = {
    cols: widths([290, 190, 60, 620]),
    rows: { 0: { size: 38 }, 1: { size: 26 }, 2: { size: 10 } },
    areGridLinesVisible: false,
  };
  book.sheet("today", todaySheet, { columns: 5, rows: first + rows.length + 10 }, layout, (draft) => {
    draft.put("A1", "Today's run", { style: { bold: true, fontSize: 16, textColor: teal, verticalAlign: "middle" } });
    draft.put(
      "A2",
      "From the wood to the cured pieces, in the order of the work. Blue is yours to type; rest on a cell to read a message.",
      {
        style: { textColor: quiet },
      },
    );
    rows.forEach((row, i) => {
      const at = first + i;
      if ("title" in row) {
        draft.put(`A${at}`, row.title, { style: { bold: true, textColor: "#ffffff", fillColor: teal } });
        draft.paint(`B${at}:D${at}`, { style: { fillColor: teal } });
      } else if ("caution" in row) draft.put(`A${at}`, row.caution, { style: { textColor: warn, italic: true } });
      else addLine(draft, at, row, wrong.includes(row));
    });
  });
}

import { cautions } from "../src/cautions";

export interface Line {
  /** By which other lines' formulas call its value: {fluid}. */
  readonly id?: string;
  readonly label: string;
  readonly typed?: string | number;
  readonly formula?: string;
  readonly unit?: readonly [us: string, si: string] | string;
  readonly note?: string;
  /** A note of two lines. */
  readonly tall?: true;
  readonly format?: string;
}

export interface Stage {
  readonly title: string;
  readonly caution?: string;
  readonly lines: readonly Line[];
}

const inches = ["in", "mm"] as const;
const quarts = ["qt", "L"] as const;
const cubic = ["in³", "cm³"] as const;
const gauge = ["inHg", "kPa"] as const;
const degrees = ["°F", "°C"] as const;

/** One run from choosing the wood to the cured pieces, in the order of the work. */
export const stages: readonly Stage[] = [
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
      { id: "voids", label: "void share", formula: "=PORE.VOIDS({gravity})" },
      {
        label: "worth treating, punky",
        formula: '=INDEX(PORE.SUITABILITY({wood},{thick},,"punky",MyShop),1,1)',
        note: '=INDEX(PORE.SUITABILITY({wood},{thick},,"punky",MyShop),1,2)',
      },
      {
        label: "and a white oak block, 2 1/2 in thick",
        formula: '=INDEX(PORE.SUITABILITY("white oak","2 1/2 in",,,MyShop),1,1)',
        note: '=INDEX(PORE.SUITABILITY("white oak","2 1/2 in",,,MyShop),1,2)',
        tall: true,
      },
      {
        label: "and a wood of gravity 1.1",
        formula: '=INDEX(PORE.SUITABILITY(1.1,"3/4 in",,,MyShop),1,1)',
        note: '=INDEX(PORE.SUITABILITY(1.1,"3/4 in",,,MyShop),1,2)',
      },
      { id: "warm", label: "the shop's air", typed: 68, unit: degrees },
      { id: "humid", label: "and its humidity", typed: 0.45, format: "0%" },
      { label: "moisture wood takes from that air", formula: "=PORE.EMC({warm},{humid},MyShop)" },
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
      { id: "pour", label: "fluid to pour, ballast and all", formula: "=INDEX({arrange},1,4)", unit: quarts, format: "0.00" },
      { id: "solids", label: "wood in it", formula: '={count}*{thick}*{wide}*{long}/IF({units}="SI",1000,1)', unit: cubic, format: "0.0" },
      { id: "uptake", label: "resin the wood will take", formula: "=PORE.UPTAKE({solids},{gravity},,,MyShop)", unit: quarts },
      {
        id: "fluid",
        label: "fluid to pour if nothing held it under",
        formula: "=PORE.FILL({across},{stack},{solids},{uptake},MyShop)",
        unit: quarts,
        note: "More than with ballast, which takes up room of its own.",
      },
      { label: "that would stand at", formula: "=PORE.FLUIDLEVEL({across},{fluid},{solids},MyShop)", unit: inches },
      { label: "and leave above it, for the foam", formula: "=PORE.HEADROOM({across},{high},{fluid},{solids},MyShop)", unit: inches },
      { id: "load", label: "the load weighs, oven-dry", typed: 690, unit: "g" },
      { label: "ballast that holds it under", formula: "=PORE.BALLAST({solids},{load},,MyShop)", unit: "g", note: cautions.ballast },
    ],
  },
  {
    title: "Vacuum",
    caution: cautions.lid,
    lines: [
      { id: "alt", label: "altitude, from My Shop", formula: "={altitude}", unit: ["ft", "m"], format: "0" },
      { label: "air pressure here", formula: "=PORE.BAROMETER({alt},MyShop)", unit: gauge },
      { label: "deepest the gauge will go", formula: "=PORE.FULLVACUUM(,MyShop)", unit: gauge },
      { id: "gauge", label: "the gauge reads", typed: 27.5, unit: gauge },
      { label: "share of the air out of the pores", formula: "=PORE.AIROUT({gauge},,MyShop)" },
      { label: "water boils in there at", formula: "=PORE.WATERBOILS({gauge},,MyShop)", unit: degrees },
      { id: "hollow", label: "volume of the chamber, empty", typed: 6, unit: quarts },
      { id: "rate", label: "the pump draws", typed: 3, unit: ["ft³/min", "L/min"] },
      {
        label: "it gets there in",
        formula: "=PORE.PUMPDOWN({hollow},{rate},{gauge},,MyShop)",
        unit: "min",
        note: cautions.pump,
        tall: true,
      },
      { id: "plate", label: "a flat acrylic lid, its thickness", typed: 0.75, unit: inches },
      {
        id: "lid",
        label: "what the screen of lids says",
        formula: '=IFERROR(INDEX(PORE.LIDLOAD({across},{plate},,,MyShop),1,1),"refused: do not pump")',
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
      { id: "mix", label: "to mix", formula: "=INDEX(PORE.MIX({pour},{hand},MyShop),1,1)", unit: quarts },
      { label: "packets of catalyst", formula: "=INDEX(PORE.MIX({pour},{hand},MyShop),1,2)" },
      { label: "left over", formula: "=INDEX(PORE.MIX({pour},{hand},MyShop),1,3)", unit: quarts, format: "0.00" },
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
      { label: "topped up, all of it until", formula: "=PORE.OLDESTUSEBY({first}:{second},,MyShop)", note: cautions.storage, tall: true },
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
export const wrong: readonly Line[] = [
  {
    label: "a gauge deeper than the air here",
    formula: '=PORE.AIROUT("31 inHg",,MyShop)',
    note: "The dial, the unit or the altitude is off.",
  },
  { label: "wood lighter than when dry", formula: "=PORE.MOISTURE({w4},{w1})", note: "One of the two weighings is wrong." },
  {
    label: "two hundred pieces at once",
    formula: "=PORE.ARRANGE({across},{high},{thick},{wide},{long},200,{gravity},MyShop)",
    note: "Fewer do: the message says how many.",
  },
  { label: "a lid of 1/4 in", formula: '=INDEX(PORE.LIDLOAD({across},"1/4 in",,,MyShop),1,1)', note: "Do not pump." },
  {
    label: "resin twice as strong as wanted",
    formula: "=PORE.DYETOPUP(1,0.5,0.25,0.25,MyShop)",
    note: "Clear fluid brings it down: the message says how much.",
  },
  { label: "a length with a comma", formula: '=PORE.BAKE("1,5 in",,,,MyShop)', note: "It can be read two ways." },
];

import { blanks, chamber, mixedOn } from "../src/demo";
import { ink, input, paper, quiet, teal, tealPale, warn, warnPale } from "./colours";
import { type Book, type Draft, type Look, widths } from "./data";
import { letters } from "./letters";
import { settingCell } from "./shopsheet";
import { bySystem, scaleUnit } from "./unitwords";

const blankSheet = "Blanks";

const header = 7;
const first = header + 1;
/** Room for more pieces: the formulas read these rows too, and a blank row stays blank. */
const spare = 20;
const last = header + blanks.length + spare;
const down = (column: string) => `${column}${first}:${column}${last}`;

/** What wood each piece is, for formulas on other sheets. */
export const blankWoods = `${blankSheet}!$B$${first}:$B$${last}`;

const system = settingCell("units");
const perUnits = (words: string, us: string, si: string) => `=${bySystem(`${words}, ${us}`, `${words}, ${si}`)}`;
const perScale = (words: string) => `="${words}, "&${scaleUnit}`;

interface Column {
  readonly head: string;
  readonly width: number;
  readonly format?: string;
  /** What a person types, or the one formula that fills the column. */
  readonly typed?: (piece: (typeof blanks)[number]) => string | number;
  readonly formula?: string;
}

/** Volume in the shop's units: cubic inches, or cubic centimetres of sides in millimetres. */
const volume = `=IF(${down("D")}="","",${down("D")}*${down("E")}*${down("F")}/IF(${system}="SI",1000,1))`;

const columns: readonly Column[] = [
  { head: "piece", width: 58, typed: ({ label }) => label },
  { head: "wood", width: 124, typed: ({ species }) => species },
  { head: "state", width: 66, typed: ({ condition }) => condition },
  { head: perUnits("thick", "in", "mm"), width: 66, typed: ({ thickness }) => thickness },
  { head: perUnits("wide", "in", "mm"), width: 66, typed: ({ width }) => width },
  { head: perUnits("long", "in", "mm"), width: 60, typed: ({ length }) => length },
  { head: perUnits("wood", "in³", "cm³"), width: 66, format: "0.00", formula: volume },
  { head: perScale("weight"), width: 74, format: "0.0", typed: ({ weight }) => weight },
  { head: perScale("oven-dry"), width: 88, format: "0.0", typed: ({ dryWeight }) => dryWeight },
  { head: "moisture", width: 76, formula: `=PORE.MOISTURE(${down("H")},${down("I")})` },
  { head: "gravity", width: 70, formula: `=PORE.GRAVITY(${down("B")})` },
  { head: "voids", width: 66, formula: `=PORE.VOIDS(${down("K")},${down("J")})` },
  {
    head: perUnits("resin", "qt", "L"),
    width: 72,
    format: "0.000",
    formula: `=PORE.UPTAKE(${down("G")},${down("K")},,${down("J")},MyShop)`,
  },
  { head: "bake, min", width: 72, formula: `=PORE.BAKE(${down("D")},${down("E")},${down("F")},${down("K")},MyShop)` },
];

interface Total {
  readonly at: readonly [label: string, value: string];
  readonly words: string;
  readonly value: string | number;
  readonly format?: string;
  readonly typed?: true;
}

/** Rows with an error are left out of the totals: SUMIF and COUNT pass errors over. */
const totals: readonly Total[] = [
  { at: ["B3", "C3"], words: perUnits("chamber inside", "in", "mm"), value: chamber, typed: true },
  { at: ["B4", "C4"], words: perUnits("stack", "in", "mm"), value: `=MAX(${down("F")})`, format: "0.00" },
  { at: ["B5", "C5"], words: perUnits("wood in it", "in³", "cm³"), value: `=SUMIF(${down("M")},">0",${down("G")})`, format: "0.0" },
  { at: ["D3", "F3"], words: "pieces ready", value: `=COUNT(${down("M")})` },
  { at: ["D4", "F4"], words: "rows to look at", value: `=SUMPRODUCT(--ISERROR(${down("M")}))` },
  { at: ["D5", "F5"], words: "longest bake, min", value: `=MAXIFS(${down("N")},${down("N")},">0")`, format: "0" },
  { at: ["G3", "I3"], words: perUnits("resin taken up", "qt", "L"), value: `=SUMIF(${down("M")},">0")`, format: "0.00" },
  { at: ["G4", "I4"], words: perUnits("fluid to pour", "qt", "L"), value: "=PORE.FILL(C3,C4,C5,I3,MyShop)" },
  { at: ["G5", "I5"], words: perUnits("dye", "tsp", "mL"), value: "=PORE.DYE(I4,,MyShop)" },
  { at: ["J3", "L3"], words: "resin mixed on", value: mixedOn, format: "yyyy-mm-dd", typed: true },
  { at: ["J4", "L4"], words: "use it by", value: "=PORE.EXPIRY(L3,,MyShop)" },
];

/** Above the table no lines are drawn. */
const bare = { hideGridLines: true };
const typedLook: Look = { style: { bold: true, textColor: input, fillColor: paper, align: "left", ...bare } };

function addTotals(draft: Draft): void {
  for (const { at, words, value, format, typed } of totals) {
    draft.put(at[0], words, { style: { textColor: quiet, align: "left", ...bare } });
    draft.put(at[1], value, typed ? { ...typedLook, format } : { style: { bold: true, textColor: ink, align: "left", ...bare }, format });
  }
  draft.paint("L3:M3", { style: typedLook.style });
}

function addColumns(draft: Draft): void {
  columns.forEach(({ head, format, typed, formula }, i) => {
    const fillColor = formula ? teal : "#4d5b59";
    const align = i < 3 ? ("left" as const) : ("right" as const);
    draft.put(`${letters(i)}${header}`, head, { style: { bold: true, textColor: "#ffffff", fillColor, align, verticalAlign: "middle" } });
    draft.paint(down(letters(i)), { style: formula ? { fillColor: tealPale, textColor: ink } : { textColor: input }, format });
    if (formula) draft.put(`${letters(i)}${first}`, formula);
    if (typed)
      blanks.forEach((piece, row) => {
        draft.put(`${letters(i)}${first + row}`, typed(piece));
      });
  });
}

/** What was typed in a row with an error is tinted; the engine colours no error itself. */
const badRow = {
  id: "badRow",
  ranges: [`A${first}:I${last}`],
  rule: {
    type: "CellIsRule" as const,
    operator: "customFormula" as const,
    values: [`=ISERROR($M${first})`],
    style: { fillColor: warnPale, textColor: warn },
  },
};

const badCount = {
  id: "badCount",
  ranges: ["F4"],
  rule: { type: "CellIsRule" as const, operator: "isGreaterThan" as const, values: ["0"], style: { textColor: warn } },
};

/** A hundred pieces, one spilled formula a column, and the totals they add up to. */
export function addBlankSheet(book: Book): void {
  const layout = {
    cols: widths(columns.map(({ width }) => width)),
    rows: { 0: { size: 38 }, 1: { size: 26 }, 5: { size: 10 }, 6: { size: 30 } },
    panes: { xSplit: 1, ySplit: header },
    areGridLinesVisible: true,
    conditionalFormats: [badRow, badCount],
  };
  book.sheet("blanks", blankSheet, { columns: columns.length + 2, rows: last + 20 }, layout, (draft) => {
    draft.paint(`A1:${letters(columns.length + 1)}6`, { style: bare });
    draft.put("B1", "A hundred pen blanks, and what they will take", {
      style: { bold: true, fontSize: 16, textColor: teal, verticalAlign: "middle", ...bare },
    });
    draft.put(
      "B2",
      "Try: change a weight, rest on a red cell to read why, or change the cover on the sheet My Shop. Blue is yours to type.",
      {
        style: { textColor: quiet, ...bare },
      },
    );
    addTotals(draft);
    addColumns(draft);
  });
}

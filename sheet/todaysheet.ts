import { ink, input, paper, quiet, teal, tealPale, warn, warnPale } from "./colours";
import { type Book, type Draft, widths } from "./data";
import { settingCell } from "./shopsheet";
import { type Line, stages, wrong } from "./todaylines";
import { bySystem, scaleUnit } from "./unitwords";

const todaySheet = "Today";

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
    if (id === "units" || id === "altitude") return settingCell(id);
    const row = rowOf.get(id);
    if (row === undefined) throw new Error(`${todaySheet} has no line called ${id}`);
    return `B${row}`;
  });
}

const unitOf = (unit: Exclude<Line["unit"], undefined>): string => {
  if (unit === "g") return `=${scaleUnit}`;
  return typeof unit === "string" ? unit : `=${bySystem(...unit)}`;
};

const middle = { verticalAlign: "middle" as const };

function addLine(draft: Draft, row: number, line: Line, isWrong: boolean): void {
  const result = isWrong ? { fillColor: warnPale, textColor: warn } : { fillColor: tealPale, textColor: ink };
  const look = line.formula ? result : { fillColor: paper, textColor: input };
  draft.put(`A${row}`, line.label, { style: { textColor: ink, ...middle } });
  const content = line.formula ? placed(line.formula) : line.typed!;
  draft.put(`B${row}`, content, { style: { ...look, align: "right", ...middle }, format: line.format });
  if (line.unit) draft.put(`C${row}`, unitOf(line.unit), { style: { textColor: quiet, ...middle } });
  if (line.note) draft.put(`D${row}`, placed(line.note), { style: { textColor: quiet, wrapping: "wrap", ...middle } });
}

/** The cells of the last block, which show errors on purpose. */
export const wrongCells: readonly string[] = wrong.map((_, i) => `B${first + rows.length - wrong.length + i}`);
export const cellOf = (id: string): string => `B${rowOf.get(id)}`;

/** A line's value, for formulas on other sheets. */
export const todayCell = (id: string): string => `${todaySheet}!$B$${rowOf.get(id)}`;

const heights = Object.fromEntries(rows.flatMap((row, i) => ("tall" in row ? [[first - 1 + i, { size: 40 }]] : [])));

/** An invented run from the wood to the cured pieces, and the bad cases with their messages. */
export function addTodaySheet(book: Book): void {
  const layout = {
    cols: widths([280, 230, 60, 610]),
    rows: { 0: { size: 38 }, 1: { size: 26 }, 2: { size: 10 }, ...heights },
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

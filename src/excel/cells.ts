import type { Cells } from "../../shared/columns";
import type { Block, Ended, Look, Selection } from "../../shared/host";
import { isHeading, isWrapped, widths } from "../../shared/listsheet";
import { type Cell, isErrorCode } from "../../shared/outcome";
import type { LastCalls } from "./lastcall";

/** Most cells that the pane reads at once. */
const most = 20_000;

const cellOf = (value: unknown, type: unknown): Cell =>
  type === "Error" ? { error: isErrorCode(value) ? value : "#VALUE!", message: "" } : (value as Cell);

const isFormula = (text: unknown): text is string => typeof text === "string" && text.startsWith("=");

/** The selected cell, the formula that fills it, and the calls that explain it. */
export async function selection(context: Excel.RequestContext, calls: LastCalls, reference?: string): Promise<Selection> {
  const range = reference === undefined ? context.workbook.getSelectedRange() : rangeOf(context, reference);
  const first = range.getCell(0, 0);
  const parent = first.getSpillParentOrNullObject();
  range.load("address");
  for (const cell of [first, parent]) cell.load("address, formulas, values, rowIndex, columnIndex");
  await context.sync();
  const origin = parent.isNullObject ? first : parent;
  const [[text]] = origin.formulas;
  const formula = isFormula(text) ? text : "";
  return {
    address: range.address,
    formula,
    row: first.rowIndex - origin.rowIndex,
    column: first.columnIndex - origin.columnIndex,
    calls: calls.at(origin.address, formula, origin.values[0][0]),
  };
}

/** "'My Shop'!A1:B9" as sheet and cells; a name without a sheet is one of the workbook's own. */
function rangeOf({ workbook }: Excel.RequestContext, reference: string): Excel.Range {
  const cut = reference.lastIndexOf("!");
  if (cut < 0) return workbook.names.getItemOrNullObject(reference).getRangeOrNullObject();
  const sheet = reference.slice(0, cut).replace(/^'|'$/g, "").replace(/''/g, "'");
  return workbook.worksheets.getItem(sheet).getRange(reference.slice(cut + 1));
}

export async function read(context: Excel.RequestContext, reference: string): Promise<Cells | undefined> {
  const range = rangeOf(context, reference);
  range.load("cellCount");
  await context.sync();
  if (range.isNullObject || range.cellCount > most || range.cellCount < 0) return undefined;
  range.load("values, valueTypes");
  await context.sync();
  return range.values.map((row, r) => row.map((value, c) => cellOf(value, range.valueTypes[r][c])));
}

/** The cells of a range as they were typed. */
export async function contents(context: Excel.RequestContext, reference: string): Promise<Block | undefined> {
  const range = rangeOf(context, reference);
  range.load("cellCount");
  await context.sync();
  if (range.isNullObject || range.cellCount > most || range.cellCount < 0) return undefined;
  range.load("address, formulas");
  await context.sync();
  return { at: range.address, cells: range.formulas };
}

/** Writes blocks of cells; what Excel refuses half way is put back. */
export async function put(context: Excel.RequestContext, blocks: readonly Block[]): Promise<Ended & { before?: readonly Block[] }> {
  const ranges = blocks.map(({ at }) => rangeOf(context, at));
  for (const range of ranges) range.load("formulas");
  await context.sync();
  const before = blocks.map(({ at, cells }, i) => ({
    at,
    cells: cells.map((row, r) => row.map((cell, c) => (cell === null ? null : ranges[i].formulas[r][c]))),
  }));
  try {
    for (const [i, { cells }] of blocks.entries()) ranges[i].formulas = cells.map((row) => [...row]);
    await context.sync();
  } catch (error) {
    for (const [i, { cells }] of before.entries()) ranges[i].formulas = cells;
    await context.sync().catch(() => undefined);
    throw error;
  }
  return { done: true, before };
}

/** Writes a formula into the selected cell, if neither it nor what it spills over holds anything. */
export async function write(
  context: Excel.RequestContext,
  formula: string,
  { formats, rows }: Look,
  over: boolean,
): Promise<Ended & { filled?: boolean }> {
  const first = context.workbook.getSelectedRange().getCell(0, 0);
  const area = first.getResizedRange(rows - 1, formats.length - 1);
  first.load("address");
  area.load("formulas, address");
  await context.sync();
  const place = first.address.slice(first.address.lastIndexOf("!") + 1);
  const [[own], ...below] = area.formulas.map((row, r) => (r ? row : [row[0], ...row.slice(1)]));
  const others = [...area.formulas[0].slice(1), ...below.flat()];
  if (own !== "" && !over) return { done: false, filled: true, words: `${place} is not empty.` };
  if (others.some((text) => text !== "") && own === "")
    return {
      done: false,
      words: `The answer fills ${area.address.slice(area.address.lastIndexOf("!") + 1)}, and those cells are not empty: choose another cell.`,
    };
  first.formulas = [[formula]];
  area.numberFormat = Array.from({ length: rows }, () => formats.map((format) => format || "General"));
  await context.sync();
  return { done: true, words: `Formula inserted in ${place}.` };
}

/** Puts the formula of the selected cell in again, which has Excel calculate it whatever it remembers. */
export async function recalculate(context: Excel.RequestContext): Promise<Ended> {
  const first = context.workbook.getSelectedRange().getCell(0, 0);
  const parent = first.getSpillParentOrNullObject();
  for (const cell of [first, parent]) cell.load("formulas");
  await context.sync();
  const origin = parent.isNullObject ? first : parent;
  if (!isFormula(origin.formulas[0][0])) return { done: false, words: "There is no formula in this cell." };
  origin.formulas = [[origin.formulas[0][0]]];
  await context.sync();
  return { done: true };
}

/** A name that no sheet has yet. */
function freeName(title: string, taken: readonly string[]): string {
  const lower = new Set(taken.map((name) => name.toLowerCase()));
  if (!lower.has(title.toLowerCase())) return title;
  let number = 2;
  while (lower.has(`${title} (${number})`.toLowerCase())) number++;
  return `${title} (${number})`;
}

/** A column's width is told in points. */
const pointsPerCharacter = 5.25;

/** A new sheet of text for the printer. The format of text comes first: an item that begins with "=" then stays text. */
export async function printSheet(context: Excel.RequestContext, title: string, rows: readonly (readonly string[])[]): Promise<Ended> {
  const { worksheets } = context.workbook;
  worksheets.load("items/name");
  await context.sync();
  const name = freeName(
    title,
    worksheets.items.map((sheet) => sheet.name),
  );
  const sheet = worksheets.add(name);
  const width = Math.max(...rows.map((row) => row.length));
  const area = sheet.getRangeByIndexes(0, 0, rows.length, width);
  area.numberFormat = rows.map(() => Array<string>(width).fill("@"));
  area.values = rows.map((row) => [...row, ...Array<string>(width - row.length).fill("")]);
  area.format.verticalAlignment = "Top";
  area.format.wrapText = true;
  for (const [i, row] of rows.entries()) {
    const line = sheet.getRangeByIndexes(i, 0, 1, width);
    if (isHeading(row, i)) line.format.font.bold = true;
    if (!isWrapped(row, i)) line.format.wrapText = false;
  }
  for (const [i, characters] of widths.slice(0, width).entries())
    sheet.getRangeByIndexes(0, i, 1, 1).format.columnWidth = characters * pointsPerCharacter;
  sheet.pageLayout.orientation = "Landscape";
  sheet.pageLayout.zoom = { horizontalFitToPages: 1 };
  sheet.pageLayout.setPrintTitleRows("$1:$1");
  sheet.activate();
  await context.sync();
  return { done: true, words: `The list is on the sheet ${name}.` };
}

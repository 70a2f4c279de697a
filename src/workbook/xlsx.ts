import { strFromU8, strToU8, unzipSync, zipSync } from "fflate";
import { type ConditionalRule, type DataValidation, type SheetChart, type WriteSheet, writeXlsx } from "hucre/xlsx";
import type { Allowed, Book, Cell, Chart, Sheet } from "./book";
import { blankRow, columnName, type Edition, refText, written } from "./formula";
import { alertStyles, styleOf } from "./looks";

/** What a formula showed when the book was last calculated. */
export type Cached = (sheet: string, row: number, column: number) => string | number | boolean | undefined;

/** A part of the package beside the workbook's own: the checklist travels so. */
export interface Part {
  readonly path: string;
  readonly xml: string;
}

type Written = NonNullable<WriteSheet["cells"]> extends Map<string, infer C> ? C : never;

const rangeOf = (row: number, column: number, rows: number, columns: number): string =>
  `${columnName(column)}${row + 1}:${columnName(column + columns - 1)}${row + rows}`;

/** Which formula of the book a cell shows: its own, or one that fills it. */
interface Standing {
  readonly sheet: Sheet;
  readonly row: number;
  readonly column: number;
  readonly cell: Cell;
}

/** A formula in the functions' edition: it spills, and every cell it fills keeps the value it had. */
function spilled(
  { sheet, row, column, cell }: Standing,
  text: string,
  cached: Cached,
  put: (row: number, column: number, cell: Written) => void,
): void {
  const style = styleOf(cell.look, cell.format);
  const { rows = 1, columns = 1 } = cell.fills ?? {};
  for (let r = 0; r < rows; r++)
    for (let c = 0; c < columns; c++) {
      const value = cached(sheet.name, row + r, column + c) ?? "";
      const own = sheet.cells.get(`${row + r},${column + c}`);
      put(row + r, column + c, {
        ...(r || c
          ? { value }
          : {
              formula: text,
              formulaResult: value,
              formulaType: "array",
              formulaRef: rangeOf(row, column, rows, columns),
              formulaDynamic: true,
            }),
        style: own && (r || c) ? styleOf(own.look, own.format) : style,
      });
    }
}

function cellsOf(sheet: Sheet, edition: Edition, cached: Cached): Map<string, Written> {
  const cells = new Map<string, Written>();
  const put = (row: number, column: number, cell: Written) => cells.set(`${row},${column}`, cell);
  const later: (() => void)[] = [];
  for (const [key, cell] of sheet.cells) {
    const [row, column] = key.split(",").map(Number);
    const style = styleOf(cell.look, cell.format);
    if (!cell.formula) {
      put(row, column, { value: cell.value ?? null, style });
      continue;
    }
    const standing = { sheet, row, column, cell };
    const text = written(cell.formula, edition, sheet.name);
    if (cell.fills)
      later.push(() =>
        text === undefined || edition.rowByRow ? filledPlainly(standing, edition, cached, put) : spilled(standing, text, cached, put),
      );
    else if (text === undefined)
      put(row, column, { value: cached(sheet.name, row, column) ?? null, style: styleOf("frozen", cell.format) });
    else put(row, column, { formula: text, formulaResult: cached(sheet.name, row, column) ?? "", style });
  }
  // Spills last: they own the cells below them.
  for (const lay of later) lay();
  return cells;
}

/** Without the functions: a formula in each row where there is a twin, else the value of the day, marked so. */
function filledPlainly(
  { sheet, row, column, cell }: Standing,
  edition: Edition,
  cached: Cached,
  put: (row: number, column: number, cell: Written) => void,
): void {
  const { rows, columns } = cell.fills!;
  for (let r = 0; r < rows; r++)
    for (let c = 0; c < columns; c++) {
      const value = cached(sheet.name, row + r, column + c) ?? "";
      const text = c === 0 && cell.perRow ? written(cell.formula!, edition, sheet.name, r) : undefined;
      const blank = blankRow(cell.formula!, sheet.name, r);
      const own = sheet.cells.get(`${row + r},${column + c}`);
      const format = own?.format ?? cell.format;
      if (text === undefined) put(row + r, column + c, { value, style: styleOf("frozen", format) });
      else
        put(row + r, column + c, {
          formula: blank ? `IF(${blank},"",${text})` : text,
          formulaResult: value,
          style: styleOf(cell.look, format),
        });
    }
}

function validationOf(range: string, allowed: Allowed, hint: string | undefined): DataValidation {
  const base = {
    range,
    allowBlank: true,
    showErrorMessage: true,
    errorTitle: "Porewise",
    ...(hint ? { showInputMessage: true, inputMessage: hint } : {}),
  };
  if ("list" in allowed) {
    const inline = allowed.list.join(",").length <= 250;
    return {
      ...base,
      type: "list",
      ...(inline ? { values: [...allowed.list] } : {}),
      errorStyle: "warning",
      errorMessage: "Choose from the list.",
    };
  }
  if ("date" in allowed) return { ...base, type: "date", operator: "greaterThanOrEqual", formula1: "61", errorMessage: "Type a date." };
  return {
    ...base,
    type: allowed.whole ? "whole" : "decimal",
    operator: "between",
    formula1: String(allowed.from),
    formula2: String(allowed.to),
    // Text with a unit ("19 mm") is as good as a number: warn, do not forbid.
    errorStyle: "warning",
    errorMessage: `Usually from ${allowed.from} to ${allowed.to}.`,
  };
}

function validationsOf(sheet: Sheet): DataValidation[] {
  const all: DataValidation[] = [];
  const columns = new Map<string, { column: number; rows: number[]; cell: Cell }>();
  for (const [key, cell] of sheet.cells) {
    if (!cell.allowed) continue;
    const [row, column] = key.split(",").map(Number);
    const group = `${column} ${JSON.stringify(cell.allowed)} ${cell.hint ?? ""}`;
    const known = columns.get(group);
    if (known) known.rows.push(row);
    else columns.set(group, { column, rows: [row], cell });
  }
  for (const { column, rows, cell } of columns.values()) {
    rows.sort((a, b) => a - b);
    let from = rows[0];
    rows.forEach((row, i) => {
      if (rows[i + 1] === row + 1) return;
      all.push(validationOf(rangeOf(from, column, row - from + 1, 1), cell.allowed!, cell.hint));
      from = rows[i + 1];
    });
  }
  return all;
}

const absolute = (sheet: Sheet, ref: Parameters<typeof refText>[0]): string => refText(ref, `${sheet.name} elsewhere`);

const chartOf = (sheet: Sheet, chart: Chart): SheetChart => ({
  type: chart.kind,
  title: chart.title,
  series: chart.series.map(({ name, values }) => ({ name, values: absolute(sheet, values), categories: absolute(sheet, chart.across) })),
  anchor: {
    from: { row: chart.at.row, col: chart.at.column },
    to: { row: chart.at.row + chart.at.rows, col: chart.at.column + chart.at.columns },
  },
  axes: { x: { title: chart.axes[0] }, y: { title: chart.axes[1] } },
  altText: chart.alt,
  legend: chart.series.length > 1 ? "bottom" : false,
});

function sheetOf(sheet: Sheet, edition: Edition, cached: Cached, paper: "letter" | "a4"): WriteSheet {
  const rules: ConditionalRule[] = sheet.alerts.map((alert, i) => ({
    type: "expression",
    priority: i + 1,
    formula: written(alert.when, edition, sheet.name) ?? "FALSE",
    range: refText(alert.over, sheet.name),
    style: alertStyles[alert.as],
  }));
  return {
    name: sheet.name,
    columns: sheet.widths.map((width) => ({ width })),
    cells: cellsOf(sheet, edition, cached),
    merges: sheet.merges.map(({ row, column, columns, rows = 1 }) => ({
      startRow: row,
      startCol: column,
      endRow: row + rows - 1,
      endCol: column + columns - 1,
    })),
    dataValidations: validationsOf(sheet),
    conditionalRules: rules,
    freezePane: sheet.frozen,
    charts: sheet.charts.map((chart) => chartOf(sheet, chart)),
    view: { showGridLines: false },
    a11y: { summary: sheet.purpose, headerRow: sheet.print.titleRow },
    pageSetup: {
      paperSize: paper,
      orientation: sheet.print.landscape ? "landscape" : "portrait",
      fitToPage: true,
      fitToWidth: 1,
      fitToHeight: sheet.print.onePage ? 1 : 0,
      printTitlesRow: sheet.print.titleRow === undefined ? undefined : `$${sheet.print.titleRow + 1}:$${sheet.print.titleRow + 1}`,
      margins: { left: 0.5, right: 0.5, top: 0.6, bottom: 0.6, header: 0.3, footer: 0.3 },
    },
    headerFooter: { oddFooter: "&LPorewise: &A&RPage &P of &N" },
  };
}

/** Programs without the functions must not be told to calculate on opening: they would lose every value. */
function finished(file: Uint8Array, parts: readonly Part[]): Uint8Array {
  const all = unzipSync(file);
  const edit = (path: string, change: (xml: string) => string) => {
    all[path] = strToU8(change(strFromU8(all[path])));
  };
  edit("xl/workbook.xml", (xml) => xml.replace(/ fullCalcOnLoad="1"/, ""));
  parts.forEach(({ path, xml }, i) => {
    all[path] = strToU8(xml);
    edit("xl/_rels/workbook.xml.rels", (rels) =>
      rels.replace(
        "</Relationships>",
        `<Relationship Id="part${i + 1}" Type="http://schemas.openxmlformats.org/officeDocument/2006/relationships/customXml" Target="../${path}"/></Relationships>`,
      ),
    );
  });
  return zipSync(all, { mtime: new Date("2026-01-01T00:00:00Z") });
}

/** The book as a file, in one edition, with the values its formulas had. */
export async function xlsx(
  book: Book,
  edition: Edition,
  cached: Cached,
  paper: "letter" | "a4",
  parts: readonly Part[] = [],
): Promise<Uint8Array> {
  const file = await writeXlsx({
    sheets: book.sheets.map((sheet) => sheetOf(sheet, edition, cached, paper)),
    namedRanges: book.names.map(({ name, ref }) => ({ name, range: refText(ref, "") })),
    properties: {
      title: book.title,
      description: book.sheets[0].purpose,
      creator: "Porewise",
      created: new Date("2026-01-01T00:00:00Z"),
      modified: new Date("2026-01-01T00:00:00Z"),
    },
    defaultFont: { name: "Calibri", size: 11 },
  });
  return finished(file, parts);
}

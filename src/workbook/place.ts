import { letters } from "../../shared/xlsx/letters";

/** A cell or a block of cells of the book. Rows and columns count from 0. */
export interface Ref {
  readonly sheet: string;
  readonly row: number;
  readonly column: number;
  readonly rows: number;
  readonly columns: number;
  /** A lookup list: always referred to whole, also where a formula is copied down beside it. */
  readonly whole?: true;
}

export const refTo = (sheet: string, row: number, column: number, rows = 1, columns = 1): Ref => ({ sheet, row, column, rows, columns });

export const whole = (ref: Ref): Ref => ({ ...ref, whole: true });

/** One cell of a block. */
export const cellIn = ({ sheet, row, column }: Ref, down: number, right = 0): Ref => refTo(sheet, row + down, column + right);

/** The block that reaches from one to the other. */
export const between = (first: Ref, last: Ref): Ref =>
  refTo(first.sheet, first.row, first.column, last.row + last.rows - first.row, last.column + last.columns - first.column);

export const isCell = ({ rows, columns }: Ref): boolean => rows * columns === 1;

/** A column of a table: a formula in one of its rows takes the cell of its own row. */
export const isColumn = (ref: Ref): boolean => ref.rows > 1 && !ref.whole;

export const key = (row: number, column: number): string => `${row},${column}`;
export const ofKey = (text: string): [row: number, column: number] => text.split(",").map(Number) as [number, number];

type Fix = "" | "$";
const address = (row: number, column: number, down: Fix, right: Fix): string => `${right}${letters(column)}${down}${row + 1}`;

export const sheetName = (name: string): string => (/^\w+$/.test(name) ? name : `'${name.replace(/'/g, "''")}'`);

const onSheet = ({ sheet }: Ref, from: string | undefined, text: string): string => (sheet === from ? text : `${sheetName(sheet)}!${text}`);

function block(ref: Ref, fix: Fix): string {
  const { row, column, rows, columns } = ref;
  const first = address(row, column, fix, fix);
  return isCell(ref) ? first : `${first}:${address(row + rows - 1, column + columns - 1, fix, fix)}`;
}

/** `A1:B9`, as ranges of a file are written. */
export const rangeText = (ref: Ref): string => block(ref, "");

/** `'My Shop'!$A$4:$B$60`, wherever it is read. */
export const fixedText = (ref: Ref): string => onSheet(ref, undefined, block(ref, "$"));

/** The row of a table that a formula refers to: its number within the table, or "alert" for a conditional format over all rows. */
export type Row = number | "alert" | undefined;

/** A reference as a formula of a sheet writes it. In a formula that is filled down, columns are relative and everything else absolute. */
export function refText(ref: Ref, from: string, row: Row): string {
  if (row === undefined) return onSheet(ref, from, block(ref, ref.sheet === from && !ref.whole ? "" : "$"));
  if (!isColumn(ref)) return onSheet(ref, from, block(ref, "$"));
  return onSheet(ref, from, address(ref.row + (row === "alert" ? 0 : row), ref.column, "", row === "alert" ? "$" : ""));
}

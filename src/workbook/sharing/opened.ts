import type { Outcome } from "../../../shared/outcome";
import { addressOf } from "../../../shared/xlsx/address";
import { type FileCell, type FileRow, rowsOf } from "../../../shared/xlsx/cells";
import { relationsOf, textOf, type Workbook } from "../../../shared/xlsx/parts";
import { sharedStringsOf } from "../../../shared/xlsx/strings";
import { read } from "../../../shared/xlsx/xml";
import type { Ref } from "../place";

export interface OpenSheet {
  readonly name: string;
  readonly path: string;
  readonly rows: readonly FileRow[];
  readonly cells: ReadonlyMap<string, FileCell>;
}

export const heldBy = ({ type, value }: FileCell): Outcome | undefined => {
  if (value === undefined) return undefined;
  if (type === "n") return Number(value);
  if (type === "b") return value === "1";
  return type === "e" ? { error: value as "#N/A", message: "" } : value;
};

export function sheetsOf({ parts, path, sheets }: Workbook): OpenSheet[] {
  const shared = relationsOf(parts, path).find(({ kind }) => kind === "sharedStrings")?.path;
  const strings = shared && parts.has(shared) ? sharedStringsOf(read(textOf(parts, shared))) : [];
  return sheets.map((sheet) => {
    const rows = rowsOf(textOf(parts, sheet.path), strings);
    return { ...sheet, rows, cells: new Map(rows.flatMap(({ cells }) => cells.map((cell) => [cell.address, cell] as const))) };
  });
}

export const cellAt = (sheets: readonly OpenSheet[], at: Ref): FileCell | undefined =>
  sheets.find(({ name }) => name === at.sheet)?.cells.get(addressOf(at));

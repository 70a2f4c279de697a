import { addressOf } from "../../../shared/xlsx/address";
import { declare, edit, put, relate } from "../../../shared/xlsx/package";
import type { Workbook } from "../../../shared/xlsx/parts";
import { escaped } from "../../../shared/xlsx/xml";
import { type BakeTable, firstRow, headings, tableName, width } from "./baketable";
import { woods } from "./woodtable";

const inline = (address: string, value: string | number): string =>
  typeof value === "number"
    ? `<c r="${address}"><v>${value}</v></c>`
    : `<c r="${address}" t="inlineStr"><is><t xml:space="preserve">${escaped(value)}</t></is></c>`;

const line = (row: number, values: readonly (string | number | undefined)[]): string =>
  `<row r="${row + 1}">${values.map((value, column) => (value === undefined ? "" : inline(addressOf({ row, column }), value))).join("")}</row>`;

const main = "http://schemas.openxmlformats.org/spreadsheetml/2006/main";

/** Puts what is looked up on a sheet of its own, at the end: the table of the oven, the woods beside it. */
export function addTable(workbook: Workbook, tables: readonly BakeTable[]): void {
  const { parts, path } = workbook;
  const own = `${path.replace(/[^/]*$/, "")}worksheets/bakeminutes.xml`;
  const bakes = tables.flatMap(({ unit, rows }) => [headings(unit), ...rows, []]);
  const beside = [["wood", "oven-dry specific gravity"], ...woods];
  const lines = [
    line(0, ["Minutes in the oven, with the shop's settings on the day this copy was made"]),
    line(1, ["Down: the thinnest side. Across: how many times as wide. Between two lines the longer time counts."]),
    line(2, ["The resin maker's label comes first. Do not use a kitchen oven. Stay with it. Bake drained pieces only."]),
    ...Array.from({ length: Math.max(bakes.length, beside.length) }, (_, i) => {
      const left: readonly (string | number)[] = bakes[i] ?? [];
      return line(firstRow + i, [...left, ...Array.from({ length: width - left.length }, () => undefined), ...(beside[i] ?? [])]);
    }),
  ];
  put(
    parts,
    own,
    `<?xml version="1.0" encoding="UTF-8" standalone="yes"?>\n<worksheet xmlns="${main}"><cols><col min="1" max="1" width="16" customWidth="1"/></cols><sheetData>${lines.join("")}</sheetData></worksheet>`,
  );
  declare(parts, own, "application/vnd.openxmlformats-officedocument.spreadsheetml.worksheet+xml");
  const id = relate(parts, path, "worksheet", "worksheets/bakeminutes.xml");
  edit(parts, path, (xml) => {
    const numbers = [...xml.matchAll(/\bsheetId="(\d+)"/g)].map(([, number]) => Number(number));
    const office = "http://schemas.openxmlformats.org/officeDocument/2006/relationships";
    return xml.replace(
      /<\/((?:\w+:)?)sheets>/,
      (end, prefix: string) =>
        `<${prefix}sheet name="${tableName}" sheetId="${Math.max(...numbers) + 1}" r:id="${id}" xmlns:r="${office}"/>${end}`,
    );
  });
}

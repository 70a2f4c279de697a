import type { WorkbookData } from "@odoo/o-spreadsheet";
import { blockOf } from "../../../shared/xlsx/address";
import { edit } from "../../../shared/xlsx/package";
import { relationsOf, textOf } from "../../../shared/xlsx/parts";
import type { Table } from "../../../shared/xlsx/tables";
import type { Parts } from "../../../shared/xlsx/unzip";
import { escaped, read } from "../../../shared/xlsx/xml";
import type { Ranges } from "./followed";

/** A table's name: formulas were told its cells when the workbook was opened, so it is a name to people alone. */
export interface KeptTable {
  readonly key: string;
  readonly name: string;
}

export const tableNames = (tables: readonly Table[], sheet: string): KeptTable[] =>
  tables.filter((table) => table.sheet === sheet).map(({ name }, i) => ({ key: `table ${i}`, name }));

/** One sheet of a package, with what is kept of its tables. */
export interface Named {
  readonly path: string;
  readonly tables: readonly KeptTable[];
  readonly here: Ranges;
}

const startOf = (range: string) => {
  const { top, left } = blockOf(range);
  return `${top} ${left}`;
};

/** Gives tables their names again; no name may be there twice, nor be that of a range. */
export function nameTables(parts: Parts, sheets: readonly Named[], ranges: WorkbookData["namedRanges"]): void {
  const taken = new Set(Object.keys(ranges).map((name) => name.toLowerCase()));
  const take = (name: string): string | undefined => {
    if (taken.has(name.toLowerCase())) return undefined;
    taken.add(name.toLowerCase());
    return name;
  };
  const found = sheets.flatMap(({ path, tables, here }) =>
    relationsOf(parts, path)
      .filter(({ kind }) => kind === "table")
      .map((relation) => {
        const { ref } = read(textOf(parts, relation.path)).attributes;
        const own = tables.find(({ key }) => here[key] && startOf(here[key]) === startOf(ref));
        return { path: relation.path, name: own && take(own.name) };
      }),
  );
  let number = 0;
  for (const { path, name } of found) {
    let given = name;
    while (!given) given = take(`Table${++number}`);
    edit(parts, path, (xml) =>
      xml.replace(/<table\s[^>]*>/, (tag) => tag.replace(/(\s(?:name|displayName)=")[^"]*/g, (_, open) => open + escaped(given!))),
    );
  }
}

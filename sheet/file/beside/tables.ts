import { blockOf, rangeOf } from "../../../shared/xlsx/address";
import { rangeKey } from "../../../shared/xlsx/names";
import { edit } from "../../../shared/xlsx/package";
import { relationsOf, textOf } from "../../../shared/xlsx/parts";
import { rootRetagged } from "../../../shared/xlsx/retag";
import type { Parts } from "../../../shared/xlsx/unzip";
import { read } from "../../../shared/xlsx/xml";
import { type BySheet, bySheet, type FileMade, type Piece } from "./piece";

/** A table's name: formulas were told its cells when the workbook was opened, so it is a name to people alone. */
export interface KeptTable {
  readonly key: string;
  readonly name: string;
}

const startOf = (range: string) => {
  const { top, left } = blockOf(range);
  return `${top} ${left}`;
};

const rename = (parts: Parts, path: string, name: string): unknown =>
  edit(parts, path, (xml) => rootRetagged(xml, { name, displayName: name }));

/** Gives tables their names again; no name may be there twice, nor be that of a range. */
function nameTables({ parts, sheets, data }: FileMade, kept: BySheet<readonly KeptTable[]> = {}): void {
  const taken = new Set(Object.keys(data.namedRanges).map(rangeKey));
  const take = (name: string): boolean => !taken.has(rangeKey(name)) && !!taken.add(rangeKey(name));
  const nameless = sheets.flatMap(({ sheet, path, here }) =>
    relationsOf(parts, path).filter((relation) => {
      if (relation.kind !== "table") return false;
      const { ref } = read(textOf(parts, relation.path)).attributes;
      const own = kept[sheet.id]?.find(({ key }) => here[key] && startOf(here[key]) === startOf(ref));
      const isNamed = own !== undefined && take(own.name);
      if (isNamed) rename(parts, relation.path, own.name);
      return !isNamed;
    }),
  );
  let number = 0;
  for (const { path } of nameless) {
    do number++;
    while (!take(`Table${number}`));
    rename(parts, path, `Table${number}`);
  }
}

export const tables: Piece<BySheet<readonly KeptTable[]>> = {
  ...bySheet<readonly KeptTable[]>({
    name: "tables",
    read: ({ own, sheet }, { tables: all, follow }) =>
      all
        .filter((table) => table.sheet === own.name)
        .map(({ name, block }, i) => {
          const key = `table ${i}`;
          follow(sheet.id, key, rangeOf(block));
          return { key, name };
        }),
    joined: ({ book }, own) => {
      const names = Object.values(own).flatMap((there) => there.map(({ name }) => name));
      const taken = new Set([...names, ...Object.keys(book.namedRanges)].map(rangeKey));
      const free = (name: string, number = 2, tried = name): string =>
        taken.has(rangeKey(tried)) ? free(name, number + 1, `${name}${number}`) : tried;
      return (kept) =>
        kept.map((table) => {
          const name = free(table.name);
          taken.add(rangeKey(name));
          return { ...table, name };
        });
    },
  }),
  write: nameTables,
};

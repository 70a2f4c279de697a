import { atOf } from "../../../shared/xlsx/address";
import type { FileRow } from "../../../shared/xlsx/cells";
import { elementOf } from "../../../shared/xlsx/elements";
import { childrenOf, read } from "../../../shared/xlsx/xml";

/** The style index that a cell has in the file: its own, or that of its row or column. */
export function styleAt(xml: string, rows: readonly FileRow[]): (address: string) => number {
  const own = new Map(rows.flatMap(({ cells }) => cells.map(({ address, look }) => [address, look] as const)));
  const ofRows = new Map(
    rows.flatMap(({ row, start, open }) => {
      const tag = xml.slice(start, open);
      const look = /\ss="(\d+)"/.exec(tag)?.[1];
      return look && /\scustomFormat="(?:1|true)"/.test(tag) ? [[row, Number(look)] as const] : [];
    }),
  );
  const columns = childrenOf(read(elementOf(xml, "cols") ?? "<cols/>")).map(({ attributes }) => ({
    min: Number(attributes.min) - 1,
    max: Number(attributes.max) - 1,
    look: Number(attributes.style ?? 0),
  }));
  return (address) => {
    const { row, column } = atOf(address);
    return own.get(address) ?? ofRows.get(row) ?? columns.find(({ min, max }) => column >= min && column <= max)?.look ?? 0;
  };
}

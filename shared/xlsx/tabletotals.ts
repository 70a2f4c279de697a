import { addressOf, blockOf } from "./address";
import { type FileCell, rowsOf } from "./cells";
import { put } from "./package";
import { relationsOf, textOf } from "./parts";
import { elementRetagged } from "./retag";
import type { Parts } from "./unzip";
import { type Change, changed, childOf, childrenOf, escaped, nameOf, read } from "./xml";

/** What a column of a table says of its last cell, the total, brought to agree with that cell. */
function totalled(xml: string, cell: FileCell | undefined): string {
  const root = read(xml);
  const prefix = root.name.slice(0, -"tableColumn".length);
  const formula = cell?.formula?.text;
  const isText = cell?.value && (cell.type === "s" || cell.type === "inlineStr") && !formula;
  const { text } = elementRetagged(xml, root, {
    totalsRowFunction: formula ? "custom" : undefined,
    totalsRowLabel: isText ? cell.value : undefined,
  });
  const own = childrenOf(root).filter((child) => nameOf(child) !== "totalsRowFormula");
  const total = formula ? `<${prefix}totalsRowFormula>${escaped(formula)}</${prefix}totalsRowFormula>` : "";
  const first = own.filter((child) => nameOf(child) === "calculatedColumnFormula");
  const said = (children: typeof own) => children.map(({ start, end }) => xml.slice(start, end)).join("");
  const inner = said(first) + total + said(own.filter((child) => !first.includes(child)));
  const open = text.replace(/\s*\/?>$/, "");
  return inner ? `${open}>${inner}</${root.name}>` : `${open}/>`;
}

/** `isChanged` tells which cells of the sheet have another content than the file had. */
export function agreeTotals(parts: Parts, sheet: string, strings: readonly string[], isChanged: (address: string) => boolean): void {
  for (const { kind, path } of relationsOf(parts, sheet)) {
    if (kind !== "table" || !parts.has(path)) continue;
    const xml = textOf(parts, path);
    const root = read(xml);
    if (!Number(root.attributes.totalsRowCount ?? 0)) continue;
    const { bottom, left } = blockOf(root.attributes.ref ?? "A1");
    const columns = childrenOf(childOf(root, "tableColumns") ?? root, "tableColumn");
    const other = columns.flatMap((column, i) => {
      const address = addressOf({ row: bottom, column: left + i });
      return isChanged(address) ? [{ column, address }] : [];
    });
    if (!other.length) continue;
    const cells = new Map(rowsOf(textOf(parts, sheet), strings).flatMap((row) => row.cells.map((cell) => [cell.address, cell] as const)));
    const changes = other.map(
      ({ column: { start, end }, address }): Change => ({
        start,
        end,
        text: totalled(xml.slice(start, end), cells.get(address)),
      }),
    );
    put(parts, path, changed(xml, changes));
  }
}

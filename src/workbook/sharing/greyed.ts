import { addressOf, cellsOf } from "../../../shared/xlsx/address";
import type { FileCell } from "../../../shared/xlsx/cells";
import { type Edits, withEdits } from "../../../shared/xlsx/edits";
import { edit, put } from "../../../shared/xlsx/package";
import { relationsOf, textOf, type Workbook } from "../../../shared/xlsx/parts";
import { StylePool } from "../../../shared/xlsx/styles";
import { frozenFill } from "../looks";

interface Sheet {
  readonly path: string;
  readonly cells: ReadonlyMap<string, FileCell>;
}

/** The cells that a formula fills and that show something. */
export function filledBy({ formula, address }: FileCell, { cells }: Sheet): string[] {
  const all = formula?.block ? cellsOf(formula.block).map(addressOf) : [address];
  return all.filter((one) => (cells.get(one)?.value ?? "") !== "");
}

/** Gives fixed values the gray fill of the template's plain edition; the rest of their style stays. */
export function grey({ parts, path }: Workbook, fixed: ReadonlyMap<Sheet, readonly string[]>): void {
  const styles = relationsOf(parts, path).find(({ kind }) => kind === "styles")?.path;
  if (!styles || !parts.has(styles)) return;
  const pool = new StylePool(textOf(parts, styles));
  for (const [{ path: own, cells }, addresses] of fixed) {
    const edits: Edits = new Map(
      addresses.map((address) => [address, { look: pool.like(cells.get(address)!.look, { fill: frozenFill }) }]),
    );
    edit(parts, own, (xml) => withEdits(xml, edits));
  }
  if (pool.isChanged) put(parts, styles, pool.written());
}

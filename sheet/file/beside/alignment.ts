import type * as OSpreadsheet from "@odoo/o-spreadsheet";

export type Engine = Pick<typeof OSpreadsheet, "registries">;

type Style = Readonly<Record<string, unknown>>;
type Cell = { readonly style?: Style };
type Cells = new (
  ...args: never[]
) => {
  extractCustomStyle(cell: Cell): Style;
};

/**
 * The engine keeps no word of an alignment that the content has anyway, text at the left and numbers at the right: what is typed
 * into the cell next would stand elsewhere. Here the word is kept.
 */
export function keepAlignment({ registries: { corePluginRegistry } }: Engine): void {
  const Base = corePluginRegistry.get("cell") as unknown as Cells;
  class AlignedCells extends Base {
    override extractCustomStyle(cell: Cell): Style {
      const style = super.extractCustomStyle(cell);
      return cell.style?.align ? { ...style, align: cell.style.align } : style;
    }
  }
  corePluginRegistry.replace("cell", AlignedCells as never);
}

import type { Model } from "@odoo/o-spreadsheet";

interface Split {
  readonly xSplit: number;
  readonly ySplit: number;
}

/** Largest share of the window for frozen rows and columns. */
const most = 0.5;
/** Below this width, in pixels, no columns are frozen. */
const narrow = 700;

/**
 * Frozen rows and columns as far as the window has room for them: the workbook keeps its own, and a small window passes over
 * them. Returns a function to call when the window changes.
 */
export function fitFrozen(model: Model): () => void {
  const getters = model.getters as unknown as Record<string, (...given: unknown[]) => any>;
  const own = getters.getPaneDivisions;
  const fitted = (sheetId: string): Split => {
    const { xSplit, ySplit } = own(sheetId) as Split;
    const { width, height } = getters.getSheetViewDimension() as { width: number; height: number };
    const down = ySplit ? getters.getRowDimensions(sheetId, ySplit - 1).end : 0;
    const across = xSplit ? getters.getColDimensions(sheetId, xSplit - 1).end : 0;
    const isTight = width < narrow && across > 0;
    return {
      xSplit: isTight || across > width * most ? 0 : xSplit,
      ySplit: down > height * most ? 0 : ySplit,
    };
  };
  getters.getPaneDivisions = (sheetId) => fitted(sheetId as string);
  return () => {
    const views = getters.getViewportCollection();
    for (const sheetId of getters.getSheetIds()) {
      const { xSplit, ySplit } = fitted(sheetId);
      const { xSplit: x, ySplit: y } = views.getPaneDivisions(sheetId) as Split;
      if (x === xSplit && y === ySplit) continue;
      views.setPaneDivision(sheetId, { xSplit, ySplit });
      views.resetViewports(sheetId);
    }
  };
}

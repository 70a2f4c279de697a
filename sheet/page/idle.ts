import type { Model } from "@odoo/o-spreadsheet";

/** Calculates the sheets that nobody looked at yet while a person does nothing, one at a time; `shown` tells whether it is still worth it. */
export function calculateWhenIdle({ getters }: Model, shown: () => boolean): void {
  const waiting = [...getters.getSheetIds()];
  const next = () => {
    const id = waiting.shift();
    if (!id || !shown()) return;
    if (getters.tryGetSheet(id)) getters.getEvaluatedCellsPositions(id);
    globalThis.requestIdleCallback?.(next);
  };
  // A browser without idle times calculates a sheet when it is turned to.
  globalThis.requestIdleCallback?.(next);
}

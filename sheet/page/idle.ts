import type { Model } from "@odoo/o-spreadsheet";
import { calculateSheet } from "../onsight";

/** Calculates the sheets that nobody looked at yet while a person does nothing, one at a time; `shown` tells whether it is still worth it. */
export function calculateWhenIdle(model: Model, shown: () => boolean): void {
  const waiting = [...model.getters.getSheetIds()];
  const next = () => {
    const id = waiting.shift();
    if (!id || !shown()) return;
    if (model.getters.tryGetSheet(id)) calculateSheet(model, id);
    globalThis.requestIdleCallback?.(next);
  };
  // A browser without idle times calculates a sheet when it is turned to.
  globalThis.requestIdleCallback?.(next);
}

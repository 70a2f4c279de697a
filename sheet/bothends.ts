import type * as OSpreadsheet from "@odoo/o-spreadsheet";

export type Engine = Pick<typeof OSpreadsheet, "CorePlugin" | "registries">;

type Getters = { getRangeFromSheetXC: (sheetId: string, reference: string) => OSpreadsheet.Range };
type Part = OSpreadsheet.Range["parts"][number];

const endOf = (text: string): Part => ({ colFixed: text.startsWith("$"), rowFixed: text.includes("$", 1) });

/**
 * The first line of a running total is `=SUM(K$3:K3)`. The engine takes a range of one cell for `K$3`, and so its second end stands
 * still when the formula is filled down. Here such a range keeps both ends.
 */
export function keepBothEnds({ CorePlugin, registries }: Engine): void {
  class BothEnds extends CorePlugin {
    static override getters = [];

    constructor(config: ConstructorParameters<typeof CorePlugin>[0]) {
      super(config);
      const getters = config.getters as unknown as Getters;
      const { getRangeFromSheetXC } = getters;
      getters.getRangeFromSheetXC = (sheetId, reference) => {
        const range = getRangeFromSheetXC(sheetId, reference);
        if (range.parts.length !== 1) return range;
        const [first, last] = reference.slice(reference.lastIndexOf("!") + 1).split(":");
        return last && /[A-Z]\$?\d/i.test(last) ? { ...range, parts: [endOf(first), endOf(last)] } : range;
      };
    }
  }
  // Before all others: they read their formulas as soon as they are made.
  const { corePluginRegistry } = registries;
  const others = { ...corePluginRegistry.content };
  for (const key of Object.keys(others)) corePluginRegistry.remove(key);
  corePluginRegistry.add("both ends", BothEnds as never);
  for (const [key, plugin] of Object.entries(others)) corePluginRegistry.add(key, plugin);
}

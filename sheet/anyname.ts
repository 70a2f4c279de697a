import type * as OSpreadsheet from "@odoo/o-spreadsheet";

export type Engine = Pick<typeof OSpreadsheet, "registries">;

type Names = Record<string, string>;
type Exporting = new (...args: unknown[]) => { getters: OSpreadsheet.Model["getters"]; export(data: OSpreadsheet.WorkbookData): void };

/** The engine copies plain objects only, and takes one with a key `constructor` for something else: this one copies itself. */
function copying(names: Names): Names {
  return Object.defineProperty(names, "clone", { enumerable: false, value: () => copying(Object.fromEntries(Object.entries(names))) });
}

/** A name of a range may be any word, `constructor` and `__proto__` as well: the engine writes names as keys of an object. */
export function allowAnyName({ registries: { corePluginRegistry } }: Engine): void {
  const Own = corePluginRegistry.get("named_ranges") as unknown as Exporting;
  class AnyName extends Own {
    override export(data: OSpreadsheet.WorkbookData): void {
      const all = this.getters.getNamedRanges().map(({ name, range }) => [name, this.getters.getRangeString(range, "forceSheetReference")]);
      data.namedRanges = copying(Object.fromEntries(all));
    }
  }
  corePluginRegistry.replace("named_ranges", AnyName as never);
}

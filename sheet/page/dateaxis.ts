import type { CellPosition, Model } from "@odoo/o-spreadsheet";
import { engine } from "./vendor";

interface Runtime {
  readonly chartJsConfig?: {
    readonly type?: string;
    readonly data?: { readonly datasets?: readonly { readonly data: readonly unknown[] }[] };
    readonly options?: { readonly indexAxis?: string; readonly scales?: { readonly x?: Record<string, unknown> & { ticks?: object } } };
  };
}

const isDay = (format: string | undefined): format is string => format !== undefined && /[dh]/.test(format.replace(/"[^"]*"/g, ""));

/** Ranges of the values of a chart, in their order. */
function rangesIn(definition: unknown): string[] {
  if (!definition || typeof definition !== "object") return [];
  return Object.entries(definition).flatMap(([name, one]) => (name === "dataRange" && typeof one === "string" ? [one] : rangesIn(one)));
}

/** How the first of the values is shown that is a number. */
function formatOf({ getters }: Model, range: string | undefined): string | undefined {
  if (!range) return undefined;
  const { sheetId, zone } = getters.getRangeFromSheetXC(getters.getActiveSheetId(), range);
  const rows = Array.from(
    { length: zone.bottom - zone.top + 1 },
    (_, down): CellPosition => ({ sheetId, col: zone.left, row: zone.top + down }),
  );
  return rows.map((at) => getters.getEvaluatedCell(at)).find(({ type }) => type === "number")?.format;
}

/** Bars along a date axis: the engine would start the axis at 0 and label it with plain numbers. */
export function dateAxis(model: Model): void {
  const getters = model.getters as unknown as Record<string, (id: string) => any>;
  const own = getters.getChartRuntime;
  const seen = new WeakSet<object>();
  getters.getChartRuntime = (id) => {
    const runtime = own(id) as Runtime | undefined;
    const config = runtime?.chartJsConfig;
    const along = config?.options?.scales?.x;
    if (!runtime || config?.type !== "bar" || config.options?.indexAxis !== "y" || !along || seen.has(runtime)) return runtime;
    seen.add(runtime);
    const format = formatOf(model, rangesIn(getters.getChartDefinition(id))[0]);
    const begins = (config.data?.datasets?.[0]?.data ?? []).filter((one): one is number => typeof one === "number");
    if (!isDay(format) || !begins.length) return runtime;
    const locale = model.getters.getLocale();
    Object.assign(along, {
      beginAtZero: false,
      min: Math.floor(Math.min(...begins)),
      ticks: { ...along.ticks, stepSize: 0.5, callback: (value: unknown) => engine.helpers.formatValue(Number(value), { format, locale }) },
    });
    return runtime;
  };
}

import type { Model } from "@odoo/o-spreadsheet";
import { standsFor } from "../lackedformats";
import { engine } from "./vendor";

interface Statistic {
  readonly env: { readonly model: Model };
  readonly store: { readonly statisticFnResults: Readonly<Record<string, { readonly value?: () => unknown } | undefined>> };
  getComposedFnName(name: string): string;
}

const isDate = (format: string): boolean => /[dyhs]/i.test(format.replace(/"[^"]*"/g, ""));

/** A sum of numbers is shown with as many decimals as they are; dates have no sum. */
function said(of: Statistic, name: string): string | undefined {
  const result = of.store.statisticFnResults[name]?.value?.();
  if (typeof result !== "number" || /count/i.test(name)) return undefined;
  const { getters } = of.env.model;
  const { format } = getters.getEvaluatedCell(getters.getActivePosition());
  if (!format) return `${name}: ${Number(result.toPrecision(4))}`;
  if (isDate(format) && /sum|avg/i.test(name)) return `${name}: –`;
  return `${name}: ${standsFor(format)?.show(result) ?? engine.helpers.formatValue(result, { format, locale: getters.getLocale() })}`;
}

/** What the bar under the sheet tells of the selected cells. */
export function roundStatistics(): void {
  const within = (part: unknown, name: string) => (part as { components: Record<string, unknown> }).components[name];
  const { prototype } = within(within(engine.Spreadsheet, "BottomBar"), "BottomBarStatistic") as { prototype: Statistic };
  const own = prototype.getComposedFnName;
  prototype.getComposedFnName = function (name) {
    return said(this, name) ?? own.call(this, name);
  };
}

import { formula } from "../formula";
import type { Page } from "../page";
import { type Ref, refTo } from "../place";
import { across } from "./three";
import type { Lengths, Times } from "./todaytimes";

const loadNumbers = [0, 1, 2] as const;
const titles = ["load", "waits", "vacuum", "soaks", "drains", "oven", "cools"] as const;
const colors = { waits: "FFFFFF", vacuum: "2B2A28", soaks: "7FB9BD", drains: "E6C595", oven: "C9822B", cools: "BFC5C9" } as const;

/** The loads of a run side by side over its hours: the numbers below the work, the picture where the run is chosen. */
export function timeline(
  page: Page,
  times: Times,
  { intake }: Lengths,
  at: { row: number; column: number; rows: number; columns: number },
): void {
  page.heading("Hours from the first load on", "", "", "", "", "", "");
  const { row } = page;
  for (const [column, title] of titles.entries()) page.put(row, column, { value: title, look: "heading" });
  const first = formula`MIN(${across(times.load)})`;
  for (const load of loadNumbers) {
    const [from, air, drain, bake, cool, done] = [times.load, times.air, times.drain, times.bake, times.cool, times.done].map(
      (one) => one[load],
    );
    const between = (start: Ref, end: Ref) => formula`IF(COUNT(${start},${end})=2,MAX(0,${end}-${start})*24,0)`;
    page.put(row + 1 + load, 0, { value: `load ${load + 1}`, look: "label" });
    const parts = [
      formula`IF(ISNUMBER(${from}),(${from}-${first})*24,0)`,
      formula`IF(ISNUMBER(${from}),IF(ISNUMBER(${intake}),${intake},0),0)`,
      between(air, drain),
      between(drain, bake),
      between(bake, cool),
      between(cool, done),
    ];
    for (const [i, made] of parts.entries()) page.put(row + 1 + load, 1 + i, { formula: made, format: "0.0", look: "result" });
  }
  const column = (index: number) => refTo(page.sheet.name, row + 1, index, loadNumbers.length);
  page.row = row + 1 + loadNumbers.length;
  page.chart({
    title: "Hours from the first load on",
    legend: "right",
    kind: "bar",
    across: column(0),
    series: titles.slice(1).map((name, i) => ({
      name,
      values: column(1 + i),
      color: colors[name as keyof typeof colors],
    })),
    at,
    axes: ["", ""],
    alt: "One bar a load, over the hours of the run: vacuum, soaking, draining and wrapping, the oven, and cooling, each as long as it takes.",
  });
}

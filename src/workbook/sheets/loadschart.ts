import { formula } from "../formula";
import type { Kit } from "../kit";
import type { Page } from "../page";
import { type Ref, whole } from "../place";
import { sheetTable } from "../sheettable";

/** Serials that begin a week: programs agree on the names of these days. */
const [sunday, monday] = [8, 2];

interface Drawn {
  readonly vacuum: Ref;
  /** Columns of the plan. */
  readonly column: (index: number) => Ref;
  readonly at: { readonly row: number; readonly column: number; readonly rows: number; readonly columns: number };
}

/** The loads over their week, a bar a load: what it shows stands in columns beside, in days from the start of the week in which the first begins: Sunday, or Monday in the SI edition. */
export function loadsChart(page: Page, kit: Kit, { vacuum, column, at }: Drawn, beside: number, header: number): void {
  const { row } = page;
  const [load, into, out, toOven, done] = [0, 12, 13, 14, 16].map(column);
  const first = formula`MIN(${whole(into)})`;
  const weekStart = kit.by(sunday, monday);
  const format = kit.by("ddd h AM/PM", "ddd hh:mm");
  page.row = header - 1;
  const { of } = sheetTable(
    page,
    {
      load: { title: "load", look: "note", each: () => formula`IF(ISNUMBER(${into}),${load},"")` },
      begins: {
        title: "begins",
        look: "note",
        format,
        each: () => formula`IF(ISNUMBER(${into}),${into}-${first}+MOD(${first}-${weekStart},7)+${weekStart},"")`,
      },
      vacuum: {
        title: "vacuum",
        look: "note",
        format: "0.00",
        each: () => formula`IF(ISNUMBER(${into}),MIN(${vacuum}/24,${out}-${into}),"")`,
      },
      soaking: {
        title: "soaking",
        look: "note",
        format: "0.00",
        each: () => formula`IF(ISNUMBER(${into}),MAX(0,${out}-${into}-${vacuum}/24),"")`,
      },
      waiting: { title: "wrapping", look: "note", format: "0.00", each: () => formula`IF(ISNUMBER(${into}),${toOven}-${out},"")` },
      baking: { title: "oven", look: "note", format: "0.00", each: () => formula`IF(COUNT(${into},${done})=2,${done}-${toOven},"")` },
    },
    [],
    { spare: into.rows, column: beside },
  );
  page.row = row;
  page.chart({
    title: "The week of the plan",
    kind: "bar",
    across: of.load,
    series: [
      { name: "not yet begun", values: of.begins, color: "FFFFFF" },
      { name: "under vacuum", values: of.vacuum, color: "2B2A28" },
      { name: "soaking", values: of.soaking, color: "A9C7C4" },
      { name: "taken out, wrapped", values: of.waiting, color: "E6DFD2" },
      { name: "in the oven", values: of.baking, color: "C9822B" },
    ],
    at,
    axes: ["load", "day and hour"],
    moments: { format, from: weekStart },
    alt: "One bar a load, over the days and hours of its week: vacuum, soaking, taking out and wrapping, and the oven.",
  });
}

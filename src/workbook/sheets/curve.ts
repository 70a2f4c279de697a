import { bakecurve } from "../../cure/bakecurve";
import { ask } from "../formula";
import type { Kit } from "../kit";
import type { Page } from "../page";
import { type Ref, refTo } from "../place";

const points = 11;

/** How a piece of the demo warms up, as numbers and as a chart. */
export function curve(
  page: Page,
  kit: Kit,
  { thickness, width, length, gravity }: Readonly<Record<"thickness" | "width" | "length" | "gravity", Ref>>,
): void {
  page.heading("How a piece warms up in the oven", "", kit.unit("temperature"), "fixed values in the workbook without the add-in");
  const top = page.row;
  const at = refTo(page.sheet.name, top, 0, points + 1, 3);
  page.block(ask(bakecurve, { thickness, width, length, gravity, points }), at, ["0.0", "0", "0"]);
  const column = (index: number) => refTo(page.sheet.name, top + 1, index, points);
  page.chart({
    title: "In the oven",
    kind: "scatter",
    across: column(0),
    series: [
      { name: "core", values: column(1), color: "8A2B1B" },
      { name: "surface", values: column(2), color: "C9822B" },
    ],
    at: { row: top, column: 3, rows: points + 1, columns: 3 },
    axes: ["minutes", kit.unit("temperature")],
    alt: "Temperature of core and surface of one piece from going into the oven to the end of the bake: the surface leads, the core follows.",
  });
}

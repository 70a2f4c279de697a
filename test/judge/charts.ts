import * as engine from "@odoo/o-spreadsheet";
import { model } from "../../sheet/engine";
import { saved } from "../../sheet/file/save";

const kinds: readonly (readonly [type: string, more?: object, second?: object])[] = [
  ["bar"],
  ["bar", { horizontal: true, stacked: true }],
  ["line", {}, { yAxisId: "y1" }],
  ["line", { fillArea: true }],
  ["pie"],
  ["pie", { isDoughnut: true }],
  ["scatter"],
  ["combo", {}, { type: "line", yAxisId: "y1" }],
  ["radar"],
  ["pyramid"],
];

export const figures = kinds.map(([type, more, second], i) => ({
  id: `figure ${i}`,
  tag: "chart",
  col: 5,
  row: 20 * i,
  offset: { x: 0, y: 0 },
  width: 400,
  height: 300,
  data: {
    type,
    chartId: `chart ${i}`,
    title: { text: "A & B" },
    dataSource: {
      type: "range",
      dataSets: ["B1:B4", "C1:C4"].map((dataRange, n) => ({ dataSetId: String(n), dataRange })),
      dataSetsHaveTitle: true,
      labelRange: "A2:A4",
    },
    dataSetStyles: { "0": { trend: { display: true, type: "polynomial", order: 1, color: "#ff0000" } }, "1": second ?? {} },
    axesDesign: { x: { title: { text: "hours" } }, y: { title: { text: "weight" } } },
    legendPosition: "top",
    showValues: true,
    ...more,
  },
}));

const cells = { A1: "h", B1: "before", C1: "after", A2: "1", A3: "2", A4: "3", B2: "4", B3: "5", B4: "6", C2: "7", C3: "8", C4: "9" };

/** A workbook with a chart of every kind that the page makes. */
export const chartFile = (): Promise<Uint8Array> =>
  saved(
    model({ ...engine.load({} as never), sheets: [{ id: "s", name: "Charts", cells, figures, rowNumber: 300, colNumber: 30 }] }),
    { documents: {}, print: {} },
    engine,
  );

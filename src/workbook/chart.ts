import type { Chart } from "./book";
import { fixedText } from "./place";

const axis = (title: string) => ({
  title,
  numberFormat: { formatCode: "0" },
  majorTickMark: "out" as const,
  minorTickMark: "none" as const,
});

/** A chart as the writer takes it. */
export const chartOf = ({ kind, title, series, across, at, axes, moments, alt, legend = "bottom" }: Chart) => ({
  type: kind,
  title,
  series: series.map(({ name, values, color }) => ({
    name,
    values: fixedText(values),
    categories: fixedText(across),
    color,
    ...(kind === "bar" ? {} : { marker: { symbol: "none" as const }, stroke: { width: 2 } }),
  })),
  anchor: { from: { row: at.row, col: at.column }, to: { row: at.row + at.rows, col: at.column + at.columns } },
  ...(kind === "bar" ? { barGrouping: "stacked" as const, overlap: 100, gapWidth: 40 } : {}),
  ...(kind === "scatter" ? { scatterStyle: "line" as const } : {}),
  axes: {
    x: { ...axis(axes[0]), ...(kind === "bar" ? { reverse: true, tickLblSkip: 1 } : {}) },
    y: {
      ...axis(axes[1]),
      gridlines: { major: true },
      ...(moments ? { numberFormat: { formatCode: moments.format }, scale: { min: moments.from, majorUnit: 0.5 } } : {}),
    },
  },
  altText: alt,
  legend: series.length > 1 && legend,
});

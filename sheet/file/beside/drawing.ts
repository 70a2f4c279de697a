import type { XmlElement } from "@rgrove/parse-xml";
import { fixed } from "../../../shared/xlsx/names";
import { allOf, type Change, changed, childOf, childrenOf, escaped, read } from "../../../shared/xlsx/xml";

/** The part that draws a chart. */

/** What the cells of a series are for; where points are joined by lines the engine has its own words for across and up. */
const cellsOfSeries: Readonly<Record<string, string>> = {
  tx: "name",
  cat: "across",
  xVal: "across",
  val: "up",
  yVal: "up",
  bubbleSize: "size",
};

/** The references of each series, by what they are for. */
const referencesOf = (root: XmlElement): Map<string, XmlElement>[] =>
  allOf(root, "ser").map(
    (series) =>
      new Map(
        Object.entries(cellsOfSeries).flatMap(([name, role]) => {
          const part = childOf(series, name);
          const reference = part && allOf(part, "f")[0];
          return reference ? [[role, reference] as const] : [];
        }),
      ),
  );

/** Whether nothing in a chart's part speaks of other cells or parts than its series do. */
export function standsAlone(xml: string, root: XmlElement): boolean {
  const known = referencesOf(root).reduce((sum, references) => sum + references.size, 0);
  return allOf(root, "f").length === known && !/\sr:(?:id|embed|link)="/.test(xml);
}

const textsIn = (root: XmlElement | undefined): string => (root ? allOf(root, "t").map(({ text }) => text) : []).join("");

/** Titles of the axes, which the engine's reader passes by: where bars lie, what is along the foot is not what they are of. */
export function axesOf(root: XmlElement): object | undefined {
  const area = allOf(root, "plotArea")[0];
  const axes = area ? childrenOf(area).filter(({ name }) => /:(?:cat|val|date)Ax$/.test(name)) : [];
  const titles = axes.slice(0, 2).map((axis) => textsIn(childOf(axis, "title")));
  const [x, y] = allOf(root, "barDir")[0]?.attributes.val === "bar" ? titles.reverse() : titles;
  return x || y ? { ...(x ? { x: { title: { text: x } } } : {}), ...(y ? { y: { title: { text: y } } } : {}) } : undefined;
}

/** Points joined by lines: to the engine a chart of lines over numbers. */
export function isJoined(root: XmlElement): boolean {
  const chart = allOf(root, "scatterChart")[0];
  if (!chart) return false;
  return allOf(chart, "ser").every((series) => {
    const line = childOf(series, "spPr") && childOf(childOf(series, "spPr")!, "ln");
    const symbol = childOf(series, "marker") && childOf(childOf(series, "marker")!, "symbol")?.attributes.val;
    return symbol === "none" && (!line || !childOf(line, "noFill"));
  });
}

/** A kept chart over the cells where the engine's chart has them now; undefined where the two do not fit each other. */
export function withCells(kept: string, written: string): string | undefined {
  const mine = referencesOf(read(kept));
  const theirs = referencesOf(read(written));
  if (mine.length !== theirs.length) return undefined;
  const changes: Change[] = [];
  for (const [i, references] of mine.entries())
    for (const [role, { start, end }] of references) {
      const other = theirs[i].get(role)?.text;
      if (!other || other.includes("#REF")) return undefined;
      changes.push({ start: kept.indexOf(">", start) + 1, end: kept.lastIndexOf("<", end - 1), text: escaped(fixed(other)) });
    }
  return changed(kept, changes);
}

import { addressOf } from "../../../shared/xlsx/address";
import { elementOf, prefixOf, sheetRoot, withElement } from "../../../shared/xlsx/elements";
import { elementRetagged } from "../../../shared/xlsx/retag";
import { allOf, changed, openingOf, read } from "../../../shared/xlsx/xml";
import type { Pair } from "./difference";
import { same } from "./difference";

/** The ranges of cells that a sheet's part merges. */
export const mergesIn = (xml: string): string[] =>
  [...(elementOf(xml, "mergeCells") ?? "").matchAll(/\sref="([^"]*)"/g)].map(([, ref]) => ref);

/** Cells that are merged. */
export function withMerges(xml: string, { before, now }: Pair): string {
  const [old, own] = [new Set(before?.merges ?? []), new Set(now.merges ?? [])];
  const gone = new Set([...old].filter((range) => !own.has(range)));
  const came = [...own].filter((range) => !old.has(range));
  if (!gone.size && !came.length) return xml;
  const prefix = prefixOf(sheetRoot(xml));
  const ranges = [...mergesIn(xml).filter((range) => !gone.has(range)), ...came];
  const text = ranges.map((range) => `<${prefix}mergeCell ref="${range}"/>`).join("");
  return withElement(xml, "mergeCells", ranges.length ? `<${prefix}mergeCells count="${ranges.length}">${text}</${prefix}mergeCells>` : "");
}

const noPanes = { xSplit: 0, ySplit: 0 };

/** What stays in sight, and whether lines are drawn between cells. */
export function withView(xml: string, { before, now }: Pair): string {
  const panes = !same(before?.panes ?? noPanes, now.panes ?? noPanes);
  const grid = (before?.areGridLinesVisible ?? true) !== (now.areGridLinesVisible ?? true);
  if (!panes && !grid) return xml;
  const prefix = prefixOf(sheetRoot(xml));
  const views = elementOf(xml, "sheetViews") ?? `<${prefix}sheetViews><${prefix}sheetView workbookViewId="0"/></${prefix}sheetViews>`;
  let text = views;
  if (grid) {
    const view = allOf(read(text), "sheetView")[0];
    text = changed(text, [elementRetagged(text, view, { showGridLines: (now.areGridLinesVisible ?? true) ? undefined : 0 })]);
  }
  if (panes) text = withPane(text, prefix, now.panes ?? noPanes);
  return withElement(xml, "sheetViews", text);
}

function withPane(views: string, prefix: string, { xSplit, ySplit }: { readonly xSplit: number; readonly ySplit: number }): string {
  const view = allOf(read(views), "sheetView")[0];
  const opening = openingOf(views, view);
  const inner = opening.closed ? "" : views.slice(opening.end, view.end - `</${view.name}>`.length);
  const selection = /<(?:\w+:)?selection\b[^>]*?(?:\/>|>[\s\S]*?<\/(?:\w+:)?selection>)/g;
  const rest = inner.replace(/<(?:\w+:)?pane\b[^>]*\/>/g, "").replace(selection, "");
  const open = views.slice(view.start, opening.end).replace(/\s*\/?>$/, ">");
  const name = xSplit && ySplit ? "bottomRight" : xSplit ? "topRight" : "bottomLeft";
  const splits = `${xSplit ? ` xSplit="${xSplit}"` : ""}${ySplit ? ` ySplit="${ySplit}"` : ""}`;
  const cell = addressOf({ row: ySplit, column: xSplit });
  const pane =
    xSplit || ySplit
      ? `<${prefix}pane${splits} topLeftCell="${cell}" activePane="${name}" state="frozen"/><${prefix}selection pane="${name}"/>`
      : "";
  return `${views.slice(0, view.start)}${open}${pane}${rest}</${view.name}>${views.slice(view.end)}`;
}

/** The color of a sheet's tab. */
export function withTab(xml: string, { before, now }: Pair): string {
  if (before?.color === now.color) return xml;
  const prefix = prefixOf(sheetRoot(xml));
  const own = elementOf(xml, "sheetPr") ?? `<${prefix}sheetPr/>`;
  const open = own.endsWith("/>") && !own.includes("</") ? own.replace(/\s*\/>$/, `></${prefix}sheetPr>`) : own;
  const bare = open.replace(/<(?:\w+:)?tabColor\b[^>]*\/>/, "");
  const tab = now.color ? `<${prefix}tabColor rgb="FF${now.color.replace("#", "").slice(0, 6).toUpperCase()}"/>` : "";
  return withElement(
    xml,
    "sheetPr",
    bare.replace(/>/, (end) => end + tab),
  );
}

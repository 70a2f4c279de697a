import type { XmlElement } from "@rgrove/parse-xml";
import type { FileRow } from "../../../shared/xlsx/cells";
import { childOf, childrenOf } from "../../../shared/xlsx/xml";
import { perHeight, perWidth, rounded, usual } from "../../linesizes";
import { bySheet } from "./piece";

/** Widths and heights as a file says them: the engine counts in whole points of a screen, and says one for every column and row. */
export interface Sizes {
  readonly widths: readonly number[];
  readonly usualWidth: number;
  readonly heights: readonly { readonly height: number; readonly fixed: boolean }[];
  readonly usualHeight: number;
  /** The element that tells what is usual on the sheet. */
  readonly usual?: string;
}

const distinct = (items: readonly number[]): number[] => [...new Set(items)];

function sizesOf(xml: string, root: XmlElement, rows: readonly FileRow[]): Sizes {
  const format = childOf(root, "sheetFormatPr");
  const columns = childrenOf(childOf(root, "cols") ?? root, "col");
  const heights = new Map<string, { height: number; fixed: boolean }>(
    rows.flatMap(({ height, fixed }) => (height === undefined ? [] : [[`${height} ${fixed}`, { height, fixed }] as const])),
  );
  return {
    widths: distinct(columns.filter(({ attributes }) => attributes.width).map(({ attributes }) => Number(attributes.width))),
    usualWidth: Number(format?.attributes.defaultColWidth ?? usual.width),
    heights: [...heights.values()],
    usualHeight: Number(format?.attributes.defaultRowHeight ?? usual.height),
    // An undeclared prefix would make the part invalid.
    usual: format && xml.slice(format.start, format.end).replace(/\s+\w+:\w+="[^"]*"/g, ""),
  };
}

/** What the engine writes for a size that it was given. */
const written = (size: number, per: number): number => rounded(per * Math.round(size / per));

const attributeOf = (tag: string, name: string): string | undefined => new RegExp(`\\s${name}="([^"]*)"`).exec(tag)?.[1];
const without = (tag: string, ...names: readonly string[]): string =>
  names.reduce((rest, name) => rest.replace(new RegExp(`\\s+${name}="[^"]*"`), ""), tag);

function columnWith(tag: string, { widths, usualWidth }: Sizes): string {
  const width = Number(attributeOf(tag, "width"));
  const own = widths.find((one) => written(one, perWidth) === width);
  const tidy = tag.replace(/\s+hidden="0"/, "");
  if (own !== undefined) return tidy.replace(/(\swidth=")[^"]*/, `$1${own}`);
  const says = ["hidden", "outlineLevel", "collapsed"].filter((name) => attributeOf(tidy, name));
  return width === written(usualWidth, perWidth) && !says.length ? "" : tidy;
}

function rowWith(tag: string, { heights, usualHeight }: Sizes): string {
  const text = attributeOf(tag, "ht");
  if (text === undefined) return tag;
  const found = heights.filter(({ height }) => written(height, perHeight) === Number(text));
  const own = found.find(({ fixed }) => fixed) ?? found[0];
  if (own) return (own.fixed ? tag : without(tag, "customHeight")).replace(/(\sht=")[^"]*/, `$1${own.height}`);
  return Number(text) === written(usualHeight, perHeight) ? without(tag, "ht", "customHeight") : tag;
}

/** A sheet as the engine writes it, with the sizes that its file had wherever they are still the same. */
function withSizes(xml: string, sizes: Sizes): string {
  return xml
    .replace(/<sheetFormatPr[^>]*\/>/, (own) => sizes.usual ?? own)
    .replace(/<col\s[^>]*\/>/g, (tag) => columnWith(tag, sizes))
    .replace(/<cols>\s*<\/cols>/, "")
    .replace(/<row\s[^>]*>/g, (tag) => rowWith(tag, sizes))
    .replace(/<row r="\d+">\s*<\/row>/g, "");
}

export const sizes = bySheet<Sizes>({
  name: "sizes",
  read: ({ own }) => sizesOf(own.xml, own.root, own.rows),
  write: (xml, _, kept) => (kept ? withSizes(xml, kept) : xml),
});

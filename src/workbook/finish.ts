import type { XmlElement } from "@rgrove/parse-xml";
import { isErrorCode } from "../../shared/outcome";
import { addressOf } from "../../shared/xlsx/address";
import { rowsOf } from "../../shared/xlsx/cells";
import { put, relate, edit as rewrite } from "../../shared/xlsx/package";
import { retagged } from "../../shared/xlsx/retag";
import { sheetWord } from "../../shared/xlsx/sheetname";
import { unzip } from "../../shared/xlsx/unzip";
import { changed, childOf, childrenOf, openingOf, withEach } from "../../shared/xlsx/xml";
import { zipped } from "../../shared/xlsx/zip";

/** A further part of the package, such as the checklist. */
export interface Part {
  readonly path: string;
  readonly xml: string;
}

/** A fixed time of each zip entry, so that builds are reproducible. */
export const made = new Date("2026-01-01T00:00:00Z");

/** A cached value that is an error gets the type t="e": without it programs read text. */
const typedErrors = (xml: string): string =>
  changed(
    xml,
    rowsOf(xml, [])
      .flatMap(({ cells }) => cells)
      .filter(({ type, value }) => type === "str" && isErrorCode(value))
      .map((cell) => retagged(xml, cell, { t: "e" })),
  );

const inner = (xml: string, elements: readonly XmlElement[]): string => elements.map(({ start, end }) => xml.slice(start, end)).join("");

/** The schema orders the elements of a font: color after size. */
const orderedFonts = (xml: string): string =>
  withEach(xml, "font", (font) => {
    const [color, size] = ["color", "sz"].map((name) => childOf(font, name));
    if (!color || !size || size.start < color.start) return undefined;
    const parts = childrenOf(font).flatMap((one) => (one === size ? [] : one === color ? [size, color] : [one]));
    return `<font>${inner(xml, parts)}</font>`;
  });

/** One rule for each block: some programs read only the first of several. */
const parted = (xml: string): string =>
  withEach(xml, "conditionalFormatting", (block) => {
    const open = xml.slice(block.start, openingOf(xml, block).end);
    return childrenOf(block)
      .map((rule) => `${open}${inner(xml, [rule])}</conditionalFormatting>`)
      .join("");
  });

/**
 * Programs without the functions must not be told to calculate on opening, or they lose every value. A calcId lower than Excel's
 * own tells it so too: this one is what Excel 2019 and later write.
 */
const calm = (xml: string): string => withEach(xml, "calcPr", () => '<calcPr calcId="191029"/>');

/** Removes the name of the library that wrote the file. */
const unsigned = (xml: string): string => ["Application", "creator"].reduce((text, name) => withEach(text, name, () => ""), xml);

/** Print areas and titles of sheets whose names are more than one word. */
const quotedSheets = (xml: string): string =>
  withEach(xml, "definedName", (name) => {
    if (!name.attributes.name.startsWith("_xlnm")) return undefined;
    const text = xml.slice(openingOf(xml, name).end, name.end);
    const quoted = text.replace(/(^|,)([^'!,<]*[^\w'!,<][^'!,<]*)!/g, (_, comma, sheet) => comma + sheetWord(sheet));
    return xml.slice(name.start, openingOf(xml, name).end) + quoted;
  });

type At = { readonly row: number; readonly column: number } | undefined;

/** The cell that is selected when a sheet is first shown. */
const withCursor = (xml: string, at: At): string =>
  withEach(xml, "sheetView", (view) => {
    if (!at) return undefined;
    const cell = addressOf(at);
    const active = childOf(view, "pane")?.attributes.activePane;
    const selection = `<selection${active ? ` pane="${active}"` : ""} activeCell="${cell}" sqref="${cell}"/>`;
    const open = xml.slice(view.start, openingOf(xml, view).end).replace(/\/?>$/, ">");
    return `${open}${inner(xml, childrenOf(view))}${selection}</sheetView>`;
  });

const book = "xl/workbook.xml";

export function finished(file: Uint8Array, parts: readonly Part[], cursors: readonly At[] = []): Uint8Array {
  const all = unzip(file);
  const edit = (path: string, change: (xml: string) => string) => rewrite(all, path, change);
  edit("xl/styles.xml", orderedFonts);
  edit(book, (xml) => quotedSheets(calm(xml)));
  for (const path of ["docProps/app.xml", "docProps/core.xml"]) if (all.has(path)) edit(path, unsigned);
  for (const path of all.keys()) if (/^xl\/worksheets\/[^/]+\.xml$/.test(path)) edit(path, (xml) => parted(typedErrors(xml)));
  for (const [i, at] of cursors.entries()) edit(`xl/worksheets/sheet${i + 1}.xml`, (xml) => withCursor(xml, at));
  for (const { path, xml } of parts) {
    put(all, path, xml);
    relate(all, book, "customXml", `../${path}`);
  }
  return zipped(all, 9);
}

import type { XmlElement } from "@rgrove/parse-xml";
import { rowless } from "./rowless";
import { changed, childrenOf, nameOf, read } from "./xml";

/** The order of a worksheet's elements by ECMA-376; programs refuse another order. */
export const elementOrder = [
  ...["sheetPr", "dimension", "sheetViews", "sheetFormatPr", "cols", "sheetData", "sheetCalcPr", "sheetProtection", "protectedRanges"],
  ...["scenarios", "autoFilter", "sortState", "dataConsolidate", "customSheetViews", "mergeCells", "phoneticPr", "conditionalFormatting"],
  ...["dataValidations", "hyperlinks", "printOptions", "pageMargins", "pageSetup", "headerFooter", "rowBreaks", "colBreaks"],
  ...["customProperties", "cellWatches", "ignoredErrors", "smartTags", "drawing", "legacyDrawing", "legacyDrawingHF", "drawingHF"],
  ...["picture", "oleObjects", "controls", "webPublishItems", "tableParts", "extLst"],
];

/** A sheet's part parsed without its rows, of which there may be very many; offsets are those of the whole text. */
export const sheetRoot = (xml: string): XmlElement => read(rowless(xml));

/** The prefix of the elements of a sheet's part. */
export const prefixOf = ({ name }: XmlElement): string => name.slice(0, -"worksheet".length);

/** A sheet's part with an element set in its place; "" takes it away. */
export function withElement(xml: string, name: string, text: string): string {
  const children = childrenOf(sheetRoot(xml));
  const own = children.find((child) => nameOf(child) === name);
  if (own) return changed(xml, [{ start: own.start, end: own.end, text }]);
  const after = children.find((child) => elementOrder.indexOf(nameOf(child)) > elementOrder.indexOf(name));
  const place = after?.start ?? children.at(-1)!.end;
  return changed(xml, [{ start: place, end: place, text }]);
}

/** One of a sheet's own elements as text. */
export function elementOf(xml: string, name: string): string | undefined {
  const own = childrenOf(sheetRoot(xml)).find((child) => nameOf(child) === name);
  return own && xml.slice(own.start, own.end);
}

/** A sheet's part with more elements of a name behind those that it has, or in their place. */
export function inserted(xml: string, name: string, text: string): string {
  if (!text) return xml;
  const children = childrenOf(sheetRoot(xml));
  const last = children.filter((child) => nameOf(child) === name).at(-1);
  const after = children.find((child) => elementOrder.indexOf(nameOf(child)) > elementOrder.indexOf(name));
  const place = last?.end ?? after?.start ?? children.at(-1)!.end;
  return changed(xml, [{ start: place, end: place, text }]);
}

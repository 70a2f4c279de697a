import { meanings, rangeNames } from "../../shared/xlsx/names";
import type { Workbook } from "../../shared/xlsx/parts";
import { childOf, childrenOf, decoded } from "../../shared/xlsx/xml";
import { typefacesOf } from "./beside/looks";
import { hasForeign } from "./beside/validations";
import type { Read } from "./contents/contents";

/** What the page cannot hold, told before it opens a workbook: the file on disk keeps it. */

type Test = (workbook: Workbook, read: Read) => boolean;

const sheetXml =
  (pattern: RegExp): Test =>
  (_, { sheets }) =>
    sheets.some(({ shell }) => pattern.test(shell));
const part = (pattern: RegExp) => (workbook: Workbook) => [...workbook.parts.keys()].some((path) => pattern.test(path));
const within = (place: RegExp, pattern: RegExp) => (workbook: Workbook) =>
  [...workbook.parts].some(([path, bytes]) => place.test(path) && pattern.test(decoded(bytes)));

/** The engine takes a cell for a formula or for a link. */
const linkedFormula: Test = (_, { sheets }) =>
  sheets.some(({ root, formulas }) => {
    const links = new Set(childrenOf(childOf(root, "hyperlinks") ?? root, "hyperlink").map(({ attributes }) => attributes.ref));
    return links.size > 0 && formulas.some(({ address }) => links.has(address));
  });

const checks: readonly [words: string, test: Test][] = [
  ["macros", part(/vbaProject\.bin$/i)],
  ["pivot tables (their cells stay as values)", part(/pivotTables\//)],
  ["slicers and timelines", part(/(slicers|timelines)\//)],
  ["comments in threads (they become notes)", part(/(^|\/)threadedComments?\d*\.xml$/i)],
  ["shapes and text boxes", within(/drawings\/drawing[^/]*\.xml$/, /<\w+:(sp|cxnSp|grpSp)[\s/>]/)],
  [
    "charts of other kinds than line, bar, pie and scatter",
    within(/charts\/chart[^/]*\.xml$/, /<c:(area|stock|surface|bubble|radar|doughnut|ofPie)\w*Chart>/),
  ],
  ["charts of the newer kinds", part(/charts\/chartEx/)],
  ["chart sheets", part(/chartsheets\//)],
  ["small charts in cells", sheetXml(/<\w*:?sparklineGroups[\s>]/)],
  ["bars in cells", sheetXml(/<\w*:?dataBar[\s>]/)],
  ["buttons and controls", part(/(ctrlProps|activeX)\//)],
  ["embedded documents", part(/embeddings\//)],
  ["links to other workbooks (their last values stay)", part(/externalLinks\//)],
  ["connections to data", part(/(connections\.xml|queryTables\/)/)],
  ["passwords of sheets", sheetXml(/<sheetProtection[^>]*(password|hashValue)=/)],
  ["views saved by one person", sheetXml(/<customSheetViews[\s>]/)],
  ["different colors or sizes within one cell", within(/sharedStrings\.xml$/, /<(\w+:)?rPr>/)],
  [
    "different fonts (all text gets the first one)",
    ({ parts }) => [...parts].some(([path, bytes]) => /(^|\/)styles\.xml$/.test(path) && typefacesOf(decoded(bytes)).size > 1),
  ],
  ["borders and number formats of conditional formats", within(/(^|\/)styles\.xml$/, /<dxf>(?:(?!<\/dxf>).)*<(?:border|numFmt)[\s>]/s)],
  [
    "rules for the length of a text or the time of day, and lists that a formula gives",
    ({ names }, { sheets }) => sheets.some(({ root }) => hasForeign(root, rangeNames(names))),
  ],
  ["filters outside tables", sheetXml(/<autoFilter[\s/>]/)],
  ["links on cells with a formula", linkedFormula],
  [
    "names for numbers and formulas (the formulas get what the names stand for)",
    ({ names }) => names.some((one) => meanings([one])(one.name, one.sheet ?? "") !== undefined),
  ],
  ["pictures in headers and footers", sheetXml(/<legacyDrawingHF[\s/]/)],
];

export const lost = (workbook: Workbook, read: Read): string[] => checks.filter(([, test]) => test(workbook, read)).map(([words]) => words);

import { meanings, rangeNames } from "../../shared/xlsx/names";
import { textOf, type Workbook } from "../../shared/xlsx/parts";
import { decoded, read } from "../../shared/xlsx/xml";
import { typefacesOf } from "./beside/looks";
import { hasForeign } from "./beside/validations";

/** What the page cannot hold, told before it opens a workbook: the file on disk keeps it. */

const sheetXml = (pattern: RegExp) => (workbook: Workbook) =>
  workbook.sheets.some(({ path }) => pattern.test(textOf(workbook.parts, path)));
const part = (pattern: RegExp) => (workbook: Workbook) => [...workbook.parts.keys()].some((path) => pattern.test(path));
const within = (place: RegExp, pattern: RegExp) => (workbook: Workbook) =>
  [...workbook.parts].some(([path, bytes]) => place.test(path) && pattern.test(decoded(bytes)));

/** The engine takes a cell for a formula or for a link. */
const linkedFormula = (workbook: Workbook) =>
  workbook.sheets.some(({ path }) => {
    const xml = textOf(workbook.parts, path);
    const cells = [...xml.matchAll(/<hyperlink\s[^>]*\bref="([A-Z]+\d+)"/g)].map(([, cell]) => cell);
    return cells.some((cell) => new RegExp(`<c [^>]*\\br="${cell}"[^>]*>\\s*<f`).test(xml));
  });

const checks: readonly [words: string, test: (workbook: Workbook) => boolean][] = [
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
  ["views of single persons", sheetXml(/<customSheetViews[\s>]/)],
  ["different colours or sizes within one cell", within(/sharedStrings\.xml$/, /<(\w+:)?rPr>/)],
  [
    "different typefaces (all becomes the first of them)",
    ({ parts }) => [...parts].some(([path, bytes]) => /(^|\/)styles\.xml$/.test(path) && typefacesOf(decoded(bytes)).size > 1),
  ],
  ["borders and number formats of conditional formats", within(/(^|\/)styles\.xml$/, /<dxf>(?:(?!<\/dxf>).)*<(?:border|numFmt)[\s>]/s)],
  [
    "rules for the length of a text or the time of day, and lists that a formula gives",
    ({ parts, sheets, names }) => sheets.some(({ path }) => hasForeign(read(textOf(parts, path)), rangeNames(names))),
  ],
  ["filters outside tables", sheetXml(/<autoFilter[\s/>]/)],
  ["links on cells with a formula", linkedFormula],
  [
    "names for numbers and formulas (what they stand for is written into the formulas)",
    ({ names }) => names.some((one) => meanings([one])(one.name, one.sheet ?? "") !== undefined),
  ],
  ["pictures in headers and footers", sheetXml(/<legacyDrawingHF[\s/]/)],
];

export const lost = (workbook: Workbook): string[] => checks.filter(([, test]) => test(workbook)).map(([words]) => words);

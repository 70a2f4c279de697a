import { meanings } from "./names";
import { textOf, type Workbook } from "./parts";
import { decoded } from "./xml";

/** What the page cannot hold, told before it opens a workbook: the file on disk keeps it. */

const sheetXml = (pattern: RegExp) => (workbook: Workbook) =>
  workbook.sheets.some(({ path }) => pattern.test(textOf(workbook.parts, path)));
const part = (pattern: RegExp) => (workbook: Workbook) => [...workbook.parts.keys()].some((path) => pattern.test(path));
const within = (place: RegExp, pattern: RegExp) => (workbook: Workbook) =>
  [...workbook.parts].some(([path, bytes]) => place.test(path) && pattern.test(decoded(bytes)));

const checks: readonly [words: string, test: (workbook: Workbook) => boolean][] = [
  ["macros", part(/vbaProject\.bin$/i)],
  ["pivot tables (their cells stay as values)", part(/pivotTables\//)],
  ["slicers and timelines", part(/(slicers|timelines)\//)],
  ["comments and notes", part(/(^|\/)(comments\d*|threadedComments?\d*)\.xml$/i)],
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
  ["typefaces (all is shown in Arial)", within(/(^|\/)styles\.xml$/, /<(\w+:)?name val="(?!Arial")/)],
  [
    "names for numbers and formulas (what they stand for is written into the formulas)",
    ({ names }) => names.some((one) => meanings([one])(one.name, one.sheet ?? "") !== undefined),
  ],
  ["pictures in headers and footers", sheetXml(/<legacyDrawingHF[\s/]/)],
];

export const lost = (workbook: Workbook): string[] => checks.filter(([, test]) => test(workbook)).map(([words]) => words);

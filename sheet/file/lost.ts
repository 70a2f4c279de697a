import { meanings } from "../../shared/xlsx/names";
import type { Workbook } from "../../shared/xlsx/parts";
import { hasPart, holds, sheetHas } from "./beside/losses";
import type { Loss } from "./beside/piece";
import { pieces } from "./beside/pieces";
import type { Read } from "./contents/contents";

/** Contents that no piece keeps. */
const others: readonly Loss[] = [
  ["macros", hasPart(/vbaProject\.bin$/i)],
  ["chart sheets", hasPart(/chartsheets\//)],
  ["small charts in cells", sheetHas(/<\w*:?sparklineGroups[\s>]/)],
  ["buttons and controls", hasPart(/(ctrlProps|activeX)\//)],
  ["embedded documents", hasPart(/embeddings\//)],
  ["links to other workbooks (their last values stay)", hasPart(/externalLinks\//)],
  ["connections to data", hasPart(/(connections\.xml|queryTables\/)/)],
  ["passwords of sheets", sheetHas(/<sheetProtection[^>]*(password|hashValue)=/)],
  ["views saved by one person", sheetHas(/<customSheetViews[\s>]/)],
  ["different colors or sizes within one cell", holds(/sharedStrings\.xml$/, /<(\w+:)?rPr>/)],
  ["filters outside tables", sheetHas(/<autoFilter[\s/>]/)],
  [
    "names for numbers and formulas (the formulas get what the names stand for)",
    ({ names }) => names.some((one) => meanings([one])(one.name, one.sheet ?? "") !== undefined),
  ],
];

/** What the page cannot hold of a file, in words. */
export const lost = (workbook: Workbook, read: Read): string[] =>
  [...pieces.flatMap((piece) => piece.lost ?? []), ...others].filter(([, test]) => test(workbook, read)).map(([words]) => words);

import type { Book } from "../moved/bookparts";
import { declare, put } from "../package";
import { textOf } from "../parts";
import { freePath, listSheet } from "./listed";

const main = "http://schemas.openxmlformats.org/spreadsheetml/2006/main";
const worksheetType = "application/vnd.openxmlformats-officedocument.spreadsheetml.worksheet+xml";

export function addSheet(book: Book, name: string): string {
  const path = freePath(book.parts, book.sheets[0].path);
  const uri =
    /\sxmlns(?::\w+)?\s*=\s*"(http:\/\/purl\.oclc\.org\/ooxml\/spreadsheetml\/main)"/.exec(textOf(book.parts, book.path))?.[1] ?? main;
  put(book.parts, path, `<?xml version="1.0" encoding="UTF-8" standalone="yes"?>\n<worksheet xmlns="${uri}"><sheetData/></worksheet>`);
  declare(book.parts, path, worksheetType);
  listSheet(book, name, path);
  return path;
}

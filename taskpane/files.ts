import { strFromU8, unzipSync } from "fflate";
import { type Choice, folder, nameOf } from "../src/workbook/choice";
import { fetched } from "./inside";

/** The workbook files that the build puts beside the pane. */

export interface Book {
  readonly name: string;
  readonly data: Uint8Array;
  readonly sheets: readonly string[];
}

const workbookPart = "xl/workbook.xml";

/** Names of the sheets in a workbook file, in their order. */
function sheetsIn(data: Uint8Array): string[] {
  const part = unzipSync(data, { filter: ({ name }) => name === workbookPart })[workbookPart];
  if (!part) return [];
  const sheets = new DOMParser().parseFromString(strFromU8(part), "application/xml").getElementsByTagNameNS("*", "sheet");
  return [...sheets].map((sheet) => sheet.getAttribute("name") ?? "");
}

/** Fetches a workbook file; undefined where it is not there or is no workbook. */
export async function fetchBook(choice: Choice): Promise<Book | undefined> {
  const name = nameOf(choice);
  try {
    const answer = await fetched(`${folder}/${name}`);
    if (!answer.ok) return undefined;
    const data = new Uint8Array(await answer.arrayBuffer());
    const sheets = sheetsIn(data);
    return sheets.length ? { name, data, sheets } : undefined;
  } catch {
    return undefined;
  }
}

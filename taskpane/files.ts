import { workbookOf } from "../shared/xlsx/parts";
import { unzip } from "../shared/xlsx/unzip";
import { type Choice, folder, nameOf } from "../src/workbook/choice";
import { fetched } from "./inside";

/** The workbook files that the build puts beside the pane. */

export interface Book {
  readonly name: string;
  readonly data: Uint8Array;
  readonly sheets: readonly string[];
}

/** Fetches a workbook file; undefined where it is not there or is no workbook. */
export async function fetchBook(choice: Choice): Promise<Book | undefined> {
  const name = nameOf(choice);
  try {
    const answer = await fetched(`${folder}/${name}`);
    if (!answer.ok) return undefined;
    const data = new Uint8Array(await answer.arrayBuffer());
    return { name, data, sheets: workbookOf(unzip(data)).sheets.map((sheet) => sheet.name) };
  } catch {
    return undefined;
  }
}

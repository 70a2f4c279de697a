import { blankFile, blankSheet } from "../../shared/xlsx/blank";
import { folder, nameOf } from "../../src/workbook/choice";
import { fetched } from "../../taskpane/inside";
import { version } from "../enginedata";
import { noStructure } from "../file/kept/structure";
import type { Content } from "./kept/work";

/** What the build made of the template's live file, ready for the engine: reading the file itself would keep a first visitor waiting. */
export const firstFile = "first.json";

/** A workbook of one bare sheet. */
export const blank = (): Content => ({
  book: { version, sheets: [{ id: "sheet1", name: "Sheet1" }], structure: { ...noStructure, sheets: { sheet1: blankSheet } } },
  file: blankFile(),
  documents: {},
  print: {},
});

const template = `${folder}/${nameOf({ edition: "live", units: "us", empty: false })}`;

/** The workbook of a first visit: the template as an invented shop filled it, or a blank one where the file cannot be had. */
export async function first(): Promise<{ name: string; content: Content }> {
  try {
    const [answer, file] = await Promise.all([fetched(firstFile), fetched(template)]);
    if (answer.ok && file.ok)
      return { name: "Invented shop", content: { ...(await answer.json()), file: new Uint8Array(await file.arrayBuffer()) } };
  } catch {
    // Without the network a blank workbook calculates as well.
  }
  return { name: "Blank workbook", content: blank() };
}

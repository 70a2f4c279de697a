import { fetched } from "../../taskpane/inside";
import { version } from "../data";
import type { Content } from "./kept/work";

/** What the build made of the template's live file, ready for the engine: reading the file itself would keep a first visitor waiting. */
export const firstFile = "first.json";

export const blank: Content = { book: { version, sheets: [{ id: "sheet1", name: "Sheet1" }] }, documents: {}, print: {} };

/** The workbook of a first visit: the template as an invented shop filled it, or a blank one where the file cannot be had. */
export async function first(): Promise<{ name: string; content: Content }> {
  try {
    const answer = await fetched(firstFile);
    if (answer.ok) return { name: "Invented shop", content: await answer.json() };
  } catch {
    // Without the network a blank workbook calculates as well.
  }
  return { name: "Blank workbook", content: blank };
}

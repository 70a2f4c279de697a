import { openedHere } from "../sheet/headless";
import { workbooks } from "./workbook";

export const firstBook = async (): Promise<Uint8Array> => (await workbooks("US", "demo", ["live"])).get("live")!;

/** The workbook that a first visitor of the page sees, as the page would read it from its file. */
export function contentOf(file: Uint8Array): object {
  const { lost, unknown, file: _, ...content } = openedHere(file);
  if (unknown.length) throw new Error(`the page does not know formulas of its own first workbook: ${unknown}`);
  return { ...content, file: Buffer.from(file).toString("base64") };
}

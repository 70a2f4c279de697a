import { openedHere } from "../sheet/headless";
import { workbooks } from "./workbook";

/** The workbook that a first visitor of the page sees, as the page would read it from its file. */
export async function firstContent(): Promise<object> {
  const file = (await workbooks("US", "demo", ["live"])).get("live")!;
  const { lost, unknown, ...content } = openedHere(file);
  if (unknown.length) throw new Error(`the page does not know formulas of its own first workbook: ${unknown}`);
  return content;
}

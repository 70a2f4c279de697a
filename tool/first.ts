import { openedHere } from "../sheet/headless";
import { workbooks } from "./workbook";

export const firstBook = async (): Promise<Uint8Array> => (await workbooks("US", "demo", ["live"])).get("live")!;

/** The engine names charts and pictures at random; a build is the same twice. */
function named<T>(content: T): T {
  const names = new Map<string, string>();
  const name = (random: string) => names.get(random) ?? names.set(random, `"figure${names.size + 1}"`).get(random)!;
  return JSON.parse(JSON.stringify(content).replace(/"[0-9a-f]{9}-[0-9a-f]{4}"/g, name));
}

/**
 * The workbook that a first visitor of the page sees, as the page would read it from its file. The file itself stands beside it,
 * where the pane takes it from too.
 */
export function contentOf(book: Uint8Array): object {
  const { lost, unknown, file: _, ...content } = openedHere(book);
  if (unknown.length) throw new Error(`the page does not know formulas of its own first workbook: ${unknown}`);
  return named(content);
}

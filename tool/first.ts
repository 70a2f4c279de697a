import { openedHere } from "../sheet/headless";
import { workbooks } from "./workbook";

export const firstBook = async (): Promise<Uint8Array> => (await workbooks("US", "demo", ["live"])).get("live")!;

/** The engine names charts and pictures at random; a build is the same twice. */
function named<T>(content: T, ids: readonly string[]): T {
  const text = ids.reduce((all, id, i) => all.replaceAll(id, `figure${i + 1}`), JSON.stringify(content));
  return JSON.parse(text);
}

/**
 * The workbook that a first visitor of the page sees, as the page would read it from its file. The file itself stands beside it,
 * where the pane takes it from too.
 */
export function contentOf(book: Uint8Array): object {
  const { lost, unknown, file: _, ...content } = openedHere(book);
  if (unknown.length) throw new Error(`the page does not know formulas of its own first workbook: ${unknown}`);
  const { sheets } = content.book as { readonly sheets: readonly { readonly figures?: readonly { readonly id: string }[] }[] };
  return named(
    content,
    sheets.flatMap(({ figures = [] }) => figures.map(({ id }) => id)),
  );
}

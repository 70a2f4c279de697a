import { piecesOf } from "../shared/xlsx/pieces";

/** Asked one after another: a formula that is put together from more cells than this is no single number's. */
const most = 6;

/** The single cells that a formula is put together from, as the sheet that holds it writes them; ranges and names are passed over. */
export function cellsIn(formula: string, address: string): readonly string[] {
  const own = address.slice(0, address.lastIndexOf("!") + 1);
  const pieces = piecesOf(formula);
  const all = pieces.flatMap(({ kind, text }, at) => {
    if (kind !== "cell") return [];
    const isOnSheet = pieces[at - 1]?.text.endsWith("!") ?? false;
    const isEnd = pieces[at + 1]?.text === ":" || pieces[at - (isOnSheet ? 2 : 1)]?.text === ":";
    return isEnd ? [] : (isOnSheet ? pieces[at - 1].text : own) + text.replaceAll("$", "");
  });
  return [...new Set(all)].slice(0, most);
}

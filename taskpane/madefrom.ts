import { tokensOf } from "../shared/xlsx/tokens";

/** Asked one after another: a formula that is put together from more cells than this is no single number's. */
const most = 6;

/** The single cells that a formula is put together from, as the sheet that holds it writes them; ranges and names are passed over. */
export function cellsIn(formula: string, address: string): readonly string[] {
  const own = address.slice(0, address.lastIndexOf("!") + 1);
  const tokens = tokensOf(formula);
  const all = tokens.flatMap(({ kind, text }, at) => {
    if (kind !== "cell") return [];
    const isOnSheet = tokens[at - 1]?.text.endsWith("!") ?? false;
    const isEnd = tokens[at + 1]?.text === ":" || tokens[at - (isOnSheet ? 2 : 1)]?.text === ":";
    return isEnd ? [] : (isOnSheet ? tokens[at - 1].text : own) + text.replaceAll("$", "");
  });
  return [...new Set(all)].slice(0, most);
}

import { tokensOf } from "../shared/xlsx/tokens";

/** Most cells that are tried: a formula of more cells does not show a single number. */
const most = 6;

/** References to single cells in a formula, as its own sheet writes them; ranges and names are passed over. */
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

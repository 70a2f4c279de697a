import { engineReference } from "../../../shared/xlsx/sheetname";
import { isCall, joined, type Token, tokensOf } from "../../../shared/xlsx/tokens";

/** Replacements for the references of a formula; undefined leaves one as it is. */
export interface Words {
  /** What stands for a sheet, by its name. */
  readonly sheet: (name: string) => string | undefined;
  /** What stands for a named range. */
  readonly range: (name: string) => string | undefined;
}

/** The sheet that a reference starts with. Those of other workbooks, `[1]Costs!`, and of several sheets, `Jan:Dec!`, are none. */
function sheetAt(tokens: readonly Token[], at: number): string | undefined {
  const { kind, text } = tokens[at];
  if (!text.endsWith("!") || tokens[at - 1]?.kind === "bracket") return undefined;
  if (kind === "sheet") return engineReference(text.slice(1, -2));
  const isLast = tokens[at - 1]?.text === ":" && tokens[at - 2]?.kind === "word";
  return kind === "word" && !isLast ? text.slice(0, -1) : undefined;
}

/** A word that may name a range: no function, no sheet, no part of a table or of a sheet. */
const isName = (tokens: readonly Token[], at: number): boolean =>
  tokens[at].kind === "word" &&
  !isCall(tokens, at) &&
  !tokens[at].text.endsWith("!") &&
  !tokens[at - 1]?.text.endsWith("!") &&
  tokens[at + 1]?.kind !== "bracket";

/** A formula, or a reference alone, with references replaced; text literals stay. */
export function reworded(formula: string, { sheet, range }: Words): string {
  const tokens = tokensOf(formula);
  const word = (at: number): string | undefined => {
    const name = sheetAt(tokens, at);
    if (name !== undefined) return sheet(name);
    return isName(tokens, at) ? range(tokens[at].text) : undefined;
  };
  return joined(tokens.map((token, at) => ({ ...token, text: word(at) ?? token.text })));
}

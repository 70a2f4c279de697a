import type { At } from "../../../shared/xlsx/address";
import { engineReference } from "../../../shared/xlsx/sheetname";
import { plainReference, type Table } from "../../../shared/xlsx/tables";
import { closing, isCall, joined, type Token, tokensOf } from "../../../shared/xlsx/tokens";
import { asTyped } from "../../../src/calls";
import { respelled } from "../../quotes";

/** What formulas of one workbook may speak of. */
export interface Vocabulary {
  readonly tables: readonly Table[];
  /** Names that stand for a number, a text or a formula: the engine has names for ranges only. */
  readonly meanings: (name: string, sheet: string) => string | undefined;
}

/** Where a formula stands. */
export interface Standing extends At {
  readonly sheet: string;
}

/** Marks that newer functions carry in files; where the engine does not know the function either, the mark changes nothing. */
const newer = /^(?:_xlfn\.|_xlws\.)+/i;

const mark = (text: string): Token => ({ kind: "mark", text });

/** `_xlfn.ANCHORARRAY(A1)` is how files write `A1#`, all that a formula in A1 fills. */
function withSpills(tokens: readonly Token[]): Token[] {
  const at = tokens.findIndex((token, i) => isCall(tokens, i) && /^_xlfn\.ANCHORARRAY$/i.test(token.text));
  if (at < 0) return [...tokens];
  const end = closing(tokens, at + 1);
  return withSpills([...tokens.slice(0, at), ...tokens.slice(at + 2, end), mark("#"), ...tokens.slice(end + 1)]);
}

function withWords(tokens: readonly Token[], { tables, meanings }: Vocabulary, standing: Standing): string {
  let out = "";
  for (let at = 0; at < tokens.length; at++) {
    const { kind, text } = tokens[at];
    const next = tokens[at + 1];
    if (kind === "error" && text === "#REF!") out += "#REF";
    else if (isCall(tokens, at)) out += text.replace(newer, "");
    else if (kind === "word" && next?.kind === "bracket")
      out += plainReference(tables, text, tokens[++at].text, standing.sheet, standing) ?? text + next.text;
    else if (kind === "bracket" && next?.kind !== "word" && tokens[at - 1]?.kind !== "sheet")
      out += plainReference(tables, undefined, text, standing.sheet, standing) ?? text;
    else if (kind === "word") out += meanings(text, standing.sheet) ?? text;
    else out += text;
  }
  return out;
}

const isSign = ({ kind, text }: Token) => kind === "mark" && /^[-+]$/.test(text);
const opens = (token: Token | undefined) => !token || (token.kind === "mark" && /^([(,;{=<>&^*/+-]|<>|<=|>=)$/.test(token.text));

/** The end of the operand that starts at a place. */
function operandEnd(tokens: readonly Token[], from: number): number {
  let at = from;
  while (tokens[at]?.kind === "sheet" || tokens[at]?.text.endsWith("!")) at++;
  if (isCall(tokens, at)) at = closing(tokens, at + 1);
  else if (tokens[at]?.text === "(") at = closing(tokens, at);
  while (/^[:%#]$/.test(tokens[at + 1]?.text ?? "")) at += tokens[at + 1].text === ":" ? 2 : 1;
  return at;
}

/** Elsewhere -2^2 is 4; the engine reads it as -4, unless told with brackets. */
function withSigns(formula: string): string {
  const tokens = tokensOf(formula).filter(({ kind }) => kind !== "space");
  for (let at = 0; at < tokens.length; at++) {
    if (!isSign(tokens[at]) || !opens(tokens[at - 1])) continue;
    let from = at;
    while (tokens[from] && isSign(tokens[from])) from++;
    const end = operandEnd(tokens, from);
    if (tokens[end + 1]?.text !== "^") continue;
    tokens.splice(end + 1, 0, mark(")"));
    tokens.splice(at, 0, mark("("));
    at++;
  }
  return joined(tokens);
}

const withSheet = (token: Token): Token => (token.kind === "sheet" ? { ...token, text: engineReference(token.text) } : token);

/** A formula of a file, which has no sign in front, as the engine reads it. */
export function engineFormula(formula: string, vocabulary: Vocabulary, standing: Standing): string {
  const named = withWords(withSpills(tokensOf(formula.replace(/^=/, ""))), vocabulary, standing);
  const placed = named.includes("''") ? joined(tokensOf(named).map(withSheet)) : named;
  const signed = /[-+][^-+]*\^/.test(placed) ? withSigns(placed) : placed;
  return `=${respelled(asTyped(signed))}`;
}

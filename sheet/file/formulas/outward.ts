import type * as OSpreadsheet from "@odoo/o-spreadsheet";
import { withoutEnds } from "../../../shared/xlsx/openends";
import { isCall, joined, type Token, tokensOf } from "../../../shared/xlsx/tokens";
import { asStored } from "../../../src/calls";

export type Writer = Pick<typeof OSpreadsheet, "parse" | "iterateAstNodes" | "convertAstNodes" | "astToFormula">;

const callOf = (tokens: readonly Token[], at: number, name: string) => isCall(tokens, at) && tokens[at].text.toUpperCase() === name;

/** A quote within a text, which the engine was told as `"a"&CHAR(34)&"b"`. */
function withQuotes(tokens: readonly Token[]): Token[] {
  const at = tokens.findIndex(
    (token, i) =>
      token.kind === "text" &&
      tokens[i + 1]?.text === "&" &&
      callOf(tokens, i + 2, "CHAR") &&
      tokens[i + 4]?.text === "34" &&
      tokens[i + 5]?.text === ")" &&
      tokens[i + 6]?.text === "&" &&
      tokens[i + 7]?.kind === "text",
  );
  if (at < 0) return [...tokens];
  const text = `${tokens[at].text.slice(0, -1)}""${tokens[at + 7].text.slice(1)}`;
  return withQuotes([...tokens.slice(0, at), { kind: "text", text }, ...tokens.slice(at + 8)]);
}

/** Files write `A1#`, all that a formula in A1 fills, as a call. */
const withSpills = (tokens: readonly Token[]): Token[] =>
  tokens.flatMap((token, i) => {
    if (token.text === "#" && tokens[i - 1]?.kind === "cell") return [{ kind: "mark", text: ")" }];
    const cell = token.kind === "cell" ? i : i + 1;
    const starts = tokens[cell]?.kind === "cell" && tokens[cell + 1]?.text === "#";
    const own = cell === i ? !/!$/.test(tokens[i - 1]?.text ?? "") : /!$/.test(token.text);
    return starts && own ? [{ kind: "word", text: "_xlfn.ANCHORARRAY" }, { kind: "mark", text: "(" }, token] : [token];
  });

/** The engine's writer takes "3/4" in a text for a day of March: every text is put back as it was typed. */
function withTexts(tokens: readonly Token[], typed: readonly Token[]): Token[] {
  const texts = typed.filter(({ kind }) => kind === "text");
  if (tokens.filter(({ kind }) => kind === "text").length !== texts.length) return [...tokens];
  return tokens.map((token) => (token.kind === "text" ? texts.shift()! : token));
}

type Node = ReturnType<Writer["parse"]>;

/** Whether a power would stand right behind a sign in front of this. */
const leadsWithPower = (node: Node): boolean => node.type === "BIN_OPERATION" && (node.value === "^" || leadsWithPower(node.left));
const isAmbiguous = (node: Node): boolean => node.type === "UNARY_OPERATION" && !node.postfix && leadsWithPower(node.operand);

/** To the engine -2^2 is -(2^2), elsewhere (-2)^2: brackets say which. Undefined where there is nothing to say. */
function withSigns(formula: string, { parse, iterateAstNodes, convertAstNodes, astToFormula }: Writer): string | undefined {
  const tree = parse(formula);
  if (!iterateAstNodes(tree).some(isAmbiguous)) return undefined;
  // A call without a name is written as a pair of brackets.
  const bracketed = (node: Node) => ({ ...node, type: "FUNCALL", value: "", args: [node] }) as unknown as Node;
  return astToFormula(
    convertAstNodes(tree, "UNARY_OPERATION", (node) => (isAmbiguous(node) ? { ...node, operand: bracketed(node.operand) } : node)),
  );
}

const newer = /_xlfn\.([A-Z0-9.]+)(?=\()/g;

/** Functions that the engine's writer has marked as new keep the mark. */
function withMarks(formula: string, written: string): string {
  const names = new Set([...written.matchAll(newer)].map(([, name]) => name));
  const tokens = tokensOf(formula);
  const marked = (text: string) => (names.has(text.toUpperCase()) ? `_xlfn.${text.toUpperCase()}` : text);
  return joined(tokens.map((token, at) => (isCall(tokens, at) ? { ...token, text: marked(token.text) } : token)));
}

/** What opening a file writes in for the engine: brackets around a sign in front of a power, and around a quote in a text. */
const forEngine = /\([-+]+[\w.$]+\)\^|CHAR\(34\)/i;

/** Whether the engine's writer changed no more than brackets and blanks: then a formula stays as it was typed. */
const isSame = (typed: string, written: string, { parse, astToFormula }: Writer): boolean =>
  !forEngine.test(typed) && astToFormula(parse(typed)).toUpperCase() === written.replace(newer, "$1").toUpperCase();

/** Numbers and names of functions in capitals, but for the mark of a newer function. */
const capital = (text: string): string => text.toUpperCase().replace(/^_XLFN\.(?:_XLWS\.)?/, (mark) => mark.toLowerCase());

/** A formula as files keep it: `typed` is what the engine holds, `written` what its own writer makes of it. */
export function fileFormula(typed: string, written: string, writer: Writer): string {
  const own = withSigns(typed, writer) ?? (isSame(typed, written, writer) ? typed.slice(1) : undefined);
  const text = own === undefined ? written : withMarks(own, written);
  const tokens = withSpills(withQuotes(withTexts(tokensOf(text), tokensOf(typed))));
  const spelt = tokens.map((token, at) =>
    token.kind === "number" || isCall(tokens, at) ? { ...token, text: capital(token.text) } : token,
  );
  return asStored(withoutEnds(joined(spelt)).replace(/#REF(?!!)/g, "#REF!"));
}

/** A formula that the engine does not know goes back as it came. */
export const untouchedFormula = (typed: string): string => asStored(withoutEnds(typed.replace(/^=/, "")));

import { type Contract, parameters } from "../../../shared/contract";
import { blockOf } from "../../../shared/xlsx/address";
import { closing, isCall, joined, type Token, tokensOf } from "../../../shared/xlsx/tokens";
import { catalogue, namespace } from "../../catalogue";
import type { Given } from "../formula";
import { type Ref, refTo } from "../place";

/** A call of one of our functions in a formula of a file, and where among its tokens it stands. */
export interface Called {
  readonly contract: Contract;
  /** Undefined where an argument is neither cells nor a value: it has no place in a plain formula of ours. */
  readonly given: Readonly<Record<string, Given>> | undefined;
  readonly from: number;
  readonly to: number;
}

/** A name that stands for cells. */
export type NameOf = (name: string) => Ref | undefined;

const unquoted = (text: string) => text.slice(0, -1).replace(/^'|'$/g, "").replace(/''/g, "'");

/** "A1", "$A$1:B9", "'My Shop'!A1:B9" or a name, as cells; undefined for anything else. */
export function refOf(tokens: readonly Token[], sheet: string, nameOf: NameOf): Ref | undefined {
  const [first, ...rest] = tokens;
  if (!first) return undefined;
  const isSheet = first.text.endsWith("!") && (first.kind === "sheet" || first.kind === "word");
  const cells = isSheet ? rest : tokens;
  if (!isSheet && cells.length === 1 && first.kind === "word") return nameOf(first.text);
  const shape = cells.map(({ kind, text }) => (kind === "cell" ? "c" : text)).join("");
  if (shape !== "c" && shape !== "c:c") return undefined;
  const { top, left, bottom, right } = blockOf(joined(cells).replace(/\$/g, ""));
  return refTo(isSheet ? unquoted(first.text) : sheet, top, left, bottom - top + 1, right - left + 1);
}

/** An argument as it is given; null where it is left out, undefined where it is more than cells or a value. */
function givenOf(tokens: readonly Token[], sheet: string, nameOf: NameOf): Given | null | undefined {
  const own = tokens.filter(({ kind }) => kind !== "space");
  if (!own.length) return null;
  const text = joined(own);
  if (own.length === 1 && own[0].kind === "text") return text.slice(1, -1).replace(/""/g, '"');
  if (/^-?[\d.]+(e[+-]?\d+)?$/i.test(text)) return Number(text);
  if (/^(true|false)$/i.test(text)) return text.toLowerCase() === "true";
  return refOf(own, sheet, nameOf);
}

/** The tokens between a call's brackets, cut at its commas. */
function argumentsOf(tokens: readonly Token[], open: number, close: number): Token[][] {
  const args: Token[][] = [[]];
  let depth = 0;
  for (const token of tokens.slice(open + 1, close)) {
    if (token.text === "(" || token.text === "{") depth++;
    if (token.text === ")" || token.text === "}") depth--;
    if (token.text === "," && depth === 0) args.push([]);
    else args.at(-1)!.push(token);
  }
  return args;
}

/** Every call of ours in a formula as it is typed, those inside another one left out. */
export function callsIn(
  formula: string,
  sheet: string,
  nameOf: NameOf,
): { readonly tokens: readonly Token[]; readonly calls: readonly Called[] } {
  const tokens = tokensOf(formula);
  const calls: Called[] = [];
  for (let at = 0; at < tokens.length; at++) {
    const word = tokens[at].text.toUpperCase();
    const contract = isCall(tokens, at) ? catalogue.find(({ name }) => `${namespace}.${name}` === word) : undefined;
    if (!contract) continue;
    const close = closing(tokens, at + 1);
    const names = parameters(contract).map(([name]) => name);
    const values = argumentsOf(tokens, at + 1, close).map((arg) => givenOf(arg, sheet, nameOf));
    const whole = values.length <= names.length && !values.includes(undefined);
    const given = values.flatMap((value, i) => (value === null || value === undefined ? [] : [[names[i], value] as const]));
    calls.push({ contract, given: whole ? Object.fromEntries(given) : undefined, from: at, to: close });
    at = close;
  }
  return { tokens, calls };
}

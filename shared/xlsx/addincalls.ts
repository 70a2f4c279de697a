import { closing, isCall, joined, type Token, tokensOf } from "./tokens";

/** The calls of an add-in's functions in formulas, by the add-in's namespace. */
export interface AddInCalls {
  /** `_xldudf_shop_fill(A1)`, as files keep it, becomes `SHOP.FILL(A1)`. */
  readonly asTyped: (formula: string) => string;
  /** `SHOP.FILL(A1)` becomes `_xldudf_SHOP_FILL(A1)`. */
  readonly asStored: (formula: string) => string;
  /** The functions that a formula calls, however it spells them, as often as it does. */
  readonly calledIn: (formula: string) => string[];
  readonly isCalledIn: (formula: string) => boolean;
  /** Whether a formula is one call and nothing else. */
  readonly isOneCall: (formula: string) => boolean;
}

const single = /^(?:_xlfn\.)?SINGLE$/i;

/** Some programs write the stored name back in lower case, and Excel puts @ in front where it takes a formula for a single value. */
export function callsOf(namespace: string): AddInCalls {
  const prefix = `_xldudf_${namespace}_`;
  const stored = new RegExp(`^${prefix}([A-Z][A-Z0-9]*)$`, "i");
  const typed = new RegExp(`^${namespace}\\.([A-Z][A-Z0-9]*)$`, "i");
  const hint = new RegExp(`${namespace}[._]`, "i");
  const nameOf = (tokens: readonly Token[], at: number): string | undefined =>
    isCall(tokens, at) ? (stored.exec(tokens[at].text) ?? typed.exec(tokens[at].text))?.[1].toUpperCase() : undefined;

  /** The @ as files store it: a function `_xlfn.SINGLE(…)` around the call. */
  const withoutSingle = (tokens: readonly Token[]): readonly Token[] => {
    const at = tokens.findIndex(
      ({ text }, i) =>
        single.test(text) && isCall(tokens, i) && nameOf(tokens, i + 2) && closing(tokens, i + 3) + 1 === closing(tokens, i + 1),
    );
    if (at < 0) return tokens;
    const end = closing(tokens, at + 1);
    return withoutSingle([...tokens.slice(0, at), ...tokens.slice(at + 2, end), ...tokens.slice(end + 1)]);
  };

  const renamed = (formula: string, from: RegExp, to: (name: string) => string): string => {
    if (!hint.test(formula)) return formula;
    const tokens = withoutSingle(tokensOf(formula));
    return joined(
      tokens.flatMap((token, at) => {
        const name = isCall(tokens, at) ? from.exec(token.text)?.[1] : undefined;
        if (name) return [{ ...token, text: to(name.toUpperCase()) }];
        return token.text === "@" && nameOf(tokens, at + 1) ? [] : [token];
      }),
    );
  };
  const calledIn = (formula: string): string[] => {
    if (!hint.test(formula)) return [];
    const tokens = tokensOf(formula);
    return tokens.flatMap((_, at) => nameOf(tokens, at) ?? []);
  };
  return {
    asTyped: (formula) => renamed(formula, stored, (name) => `${namespace}.${name}`),
    asStored: (formula) => renamed(formula, typed, (name) => `${prefix}${name}`),
    calledIn,
    isCalledIn: (formula) => calledIn(formula).length > 0,
    isOneCall(formula) {
      const tokens = tokensOf(formula).filter(({ kind, text }) => kind !== "space" && text !== "@");
      const first = tokens[0]?.text === "=" ? 1 : 0;
      const isClosed = tokens.at(-1)?.text === ")" && closing(tokens, first + 1) === tokens.length - 1;
      return isClosed && calledIn(formula).length === 1 && nameOf(tokens, first) !== undefined;
    },
  };
}

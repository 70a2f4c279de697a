import { closing, isCall, joined, type Piece, piecesOf } from "./pieces";

/** The calls of an add-in's functions in formulas, by the add-in's namespace. */
export interface Ours {
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

/** A program writes the stored name back in lower case, and a sign in front where it takes a formula for one value. */
export function callsOf(namespace: string): Ours {
  const prefix = `_xldudf_${namespace}_`;
  const stored = new RegExp(`^${prefix}([A-Z][A-Z0-9]*)$`, "i");
  const typed = new RegExp(`^${namespace}\\.([A-Z][A-Z0-9]*)$`, "i");
  const hint = new RegExp(`${namespace}[._]`, "i");
  const nameOf = (pieces: readonly Piece[], at: number): string | undefined =>
    isCall(pieces, at) ? (stored.exec(pieces[at].text) ?? typed.exec(pieces[at].text))?.[1].toUpperCase() : undefined;

  /** The sign in front, spelt as a function around the call: files of other programs say `_xlfn.SINGLE(…)`. */
  const withoutSingle = (pieces: readonly Piece[]): readonly Piece[] => {
    const at = pieces.findIndex(
      ({ text }, i) =>
        single.test(text) && isCall(pieces, i) && nameOf(pieces, i + 2) && closing(pieces, i + 3) + 1 === closing(pieces, i + 1),
    );
    if (at < 0) return pieces;
    const end = closing(pieces, at + 1);
    return withoutSingle([...pieces.slice(0, at), ...pieces.slice(at + 2, end), ...pieces.slice(end + 1)]);
  };

  const renamed = (formula: string, from: RegExp, to: (name: string) => string): string => {
    if (!hint.test(formula)) return formula;
    const pieces = withoutSingle(piecesOf(formula));
    return joined(
      pieces.flatMap((piece, at) => {
        const name = isCall(pieces, at) ? from.exec(piece.text)?.[1] : undefined;
        if (name) return [{ ...piece, text: to(name.toUpperCase()) }];
        return piece.text === "@" && nameOf(pieces, at + 1) ? [] : [piece];
      }),
    );
  };
  const calledIn = (formula: string): string[] => {
    if (!hint.test(formula)) return [];
    const pieces = piecesOf(formula);
    return pieces.flatMap((_, at) => nameOf(pieces, at) ?? []);
  };
  return {
    asTyped: (formula) => renamed(formula, stored, (name) => `${namespace}.${name}`),
    asStored: (formula) => renamed(formula, typed, (name) => `${prefix}${name}`),
    calledIn,
    isCalledIn: (formula) => calledIn(formula).length > 0,
    isOneCall(formula) {
      const pieces = piecesOf(formula).filter(({ kind, text }) => kind !== "space" && text !== "@");
      const first = pieces[0]?.text === "=" ? 1 : 0;
      const isClosed = pieces.at(-1)?.text === ")" && closing(pieces, first + 1) === pieces.length - 1;
      return isClosed && calledIn(formula).length === 1 && nameOf(pieces, first) !== undefined;
    },
  };
}

import { parseA1Ref, type RangeA1, type ReferenceA1Xlsx, stringifyA1Ref, stringifyTokens, type Token, tokenize } from "@borgar/fx/xlsx";
import { atOf, type Block } from "./address";

/** A change of a workbook's structure, as references see it. Lines and cells are counted from 0. */
export type Move =
  | {
      readonly kind: "lines";
      readonly sheet: string;
      readonly axis: Axis;
      readonly at: number /** Fewer than none are taken out. */;
      readonly by: number;
    }
  | {
      readonly kind: "block";
      readonly sheet: string;
      readonly block: Block;
      readonly to: { readonly sheet: string; readonly row: number; readonly column: number };
    }
  | { readonly kind: "names"; readonly sheets: ReadonlyMap<string, string> }
  | { readonly kind: "gone"; readonly sheet: string };

export type Axis = "row" | "column";

export const most: Readonly<Record<Axis, number>> = { row: 1_048_576, column: 16_384 };

export const sheetName = (name: string): string => name.toLowerCase();
const same = (a: string, b: string) => sheetName(a) === sheetName(b);

/** The ends of a run of lines after lines came or went; undefined where none of it is left. */
export function movedEnds(first: number, last: number, at: number, by: number, limit: number): readonly [number, number] | undefined {
  if (by > 0) {
    const start = first >= at ? first + by : first;
    if (start >= limit) return undefined;
    return [start, Math.min(last >= at ? last + by : last, limit - 1)];
  }
  const end = at - by;
  if (first >= at && last < end) return undefined;
  return [first < at ? first : Math.max(at, first + by), last < at ? last : last < end ? at - 1 : last + by];
}

export const within = (inner: Block, outer: Block): boolean =>
  inner.top >= outer.top && inner.bottom <= outer.bottom && inner.left >= outer.left && inner.right <= outer.right;

/** A block of the sheet that a move is about; undefined where it is gone. Blocks of other sheets do not come here. */
export function movedBlock(block: Block, move: Move): Block | undefined {
  if (move.kind === "lines") {
    const [first, last] = move.axis === "row" ? (["top", "bottom"] as const) : (["left", "right"] as const);
    const ends = movedEnds(block[first], block[last], move.at, move.by, most[move.axis]);
    return ends && { ...block, [first]: ends[0], [last]: ends[1] };
  }
  if (move.kind === "block" && same(move.sheet, move.to.sheet) && within(block, move.block)) {
    const [down, right] = [move.to.row - move.block.top, move.to.column - move.block.left];
    return { top: block.top + down, bottom: block.bottom + down, left: block.left + right, right: block.right + right };
  }
  return block;
}

type Range = RangeA1;

const whole = (range: Range): Block => ({
  top: range.top ?? 0,
  left: range.left ?? 0,
  bottom: range.bottom ?? most.row - 1,
  right: range.right ?? most.column - 1,
});

/** What a reference to a sheet says after a move; undefined where nothing is left of it, the same object where it stays. */
function movedRange(range: Range, move: Move): Range | undefined {
  if (move.kind !== "lines") {
    const all = whole(range);
    const block = movedBlock(all, move);
    if (!block || block === all) return block && range;
    const ends = (["top", "left", "bottom", "right"] as const).filter((end) => range[end] != null).map((end) => [end, block[end]]);
    return { ...range, ...Object.fromEntries(ends) };
  }
  const [first, last] = move.axis === "row" ? (["top", "bottom"] as const) : (["left", "right"] as const);
  // A whole column has no rows that could move.
  if (range[first] == null || range[last] == null) return range;
  const ends = movedEnds(range[first], range[last], move.at, move.by, most[move.axis]);
  if (!ends) return undefined;
  return ends[0] === range[first] && ends[1] === range[last] ? range : { ...range, [first]: ends[0], [last]: ends[1] };
}

export interface Moved {
  readonly formula: string;
  /** Whether a reference got other cells than those it had: then its value may be another. */
  readonly resized: boolean;
}

const lost = "#REF!";

/** Names of these letters stand bare in front of a reference, unless the library knows better: signs of print want quotes as well. */
const isPlain = (sheets: string): boolean => /^[\p{L}\p{M}\p{N}_.:]*$/u.test(sheets);

function written(reference: Parameters<typeof stringifyA1Ref>[0] & { readonly sheetName?: string }): string {
  const text = stringifyA1Ref(reference);
  const { sheetName: name = "" } = reference;
  return isPlain(name) || text.startsWith("'") ? text : `'${name.replace(/'/g, "''")}'${text.slice(name.length)}`;
}

const sizeOf = ({ top, bottom, left, right }: Range) => [(bottom ?? 0) - (top ?? 0), (right ?? 0) - (left ?? 0)].join();

/** One reference of a formula that stands on a sheet. */
function movedToken(value: string, own: string, move: Move): { readonly value: string; readonly resized: boolean } {
  const stays = { value, resized: false };
  const reference = parseA1Ref(value) as ReferenceA1Xlsx | undefined;
  if (!reference?.range || reference.workbookName) return stays;
  const named = reference.sheetName ?? "";
  const [first, last] = named.split(":");
  if (move.kind === "names") {
    if (!named) return stays;
    const to = [first, last]
      .filter(Boolean)
      .map((one) => move.sheets.get(sheetName(one)) ?? one)
      .join(":");
    return to === named ? stays : { value: written({ ...reference, sheetName: to }), resized: false };
  }
  if (last) return stays;
  if (!same(named || own, move.sheet)) return stays;
  if (move.kind === "gone") return { value: lost, resized: true };
  if (move.kind === "block" && !same(move.sheet, move.to.sheet)) {
    if (!within(whole(reference.range), move.block)) return stays;
    const [down, right] = [move.to.row - move.block.top, move.to.column - move.block.left];
    const { top, left, bottom, right: end } = whole(reference.range);
    const range = { ...reference.range, top: top + down, bottom: bottom + down, left: left + right, right: end + right };
    return { value: written({ sheetName: same(own, move.to.sheet) ? "" : move.to.sheet, range }), resized: false };
  }
  const range = movedRange(reference.range, move);
  const prefix = value.slice(0, value.lastIndexOf("!") + 1);
  if (!range) return { value: prefix + lost, resized: true };
  if (range === reference.range) return stays;
  const text = prefix + written({ range } as ReferenceA1Xlsx);
  return text.toUpperCase() === value.toUpperCase() ? stays : { value: text, resized: sizeOf(range) !== sizeOf(reference.range) };
}

const isReference = ({ type }: Token) => type === "range" || type === "range_beam" || type === "range_ternary";

/** What of a formula a sheet's new name changes beside whole references: `Old!Name`, `Old!#REF!`. */
function movedContext(value: string, move: Move): string {
  if (move.kind !== "names") return value;
  const quoted = /^'/.test(value);
  const name = quoted ? value.slice(1, -1).replace(/''/g, "'") : value;
  const to = move.sheets.get(sheetName(name));
  return to === undefined
    ? value
    : written({ sheetName: to, range: { top: 0, left: 0, bottom: 0, right: 0 } as Range }).replace(/!A1$/, "");
}

/** A formula, without its sign, as it reads after a move; `own` is the sheet that it stands on. */
export function movedFormula(formula: string, own: string, move: Move): Moved {
  let resized = false;
  let touched = false;
  const tokens = tokenize(formula, { mergeRefs: true }).map((token) => {
    const before = token.value;
    if (isReference(token)) {
      const moved = movedToken(before, own, move);
      resized ||= moved.resized;
      touched ||= moved.value !== before;
      return { ...token, value: moved.value };
    }
    if (token.type === "context" || token.type === "context_quote" || (token.type === "range_named" && before.includes("!"))) {
      const cut = before.lastIndexOf("!");
      const value = cut < 0 ? movedContext(before, move) : movedContext(before.slice(0, cut), move) + before.slice(cut);
      touched ||= value !== before;
      return { ...token, value };
    }
    return token;
  });
  return touched ? { formula: stringifyTokens(tokens), resized } : { formula, resized: false };
}

const cellWord = /(?<![\w.$])\$?([A-Z]{1,3})\$?([1-9]\d*)(?![\w.(])/gi;

/** A formula without the cells that no sheet has: the engine moves references past the last row and column. */
export const withinSheet = (formula: string): string =>
  formula.replace(cellWord, (text) => {
    const { row, column } = atOf(text);
    return row < most.row && column < most.column ? text : lost;
  });

/** A formula's words without where its references lead. */
export const withoutReferences = (formula: string): string =>
  tokenize(formula.replace(/#REF(?!!)/g, lost), { mergeRefs: true })
    .map((token) => (isReference(token) || token.value.endsWith(lost) ? "?" : token.value))
    .join("")
    .replace(/\?(?::\?)+/g, "?")
    .toUpperCase();

import { type Contract, parameters } from "../../shared/contract";
import { type Ref, type Row, refText } from "./place";

/** The value of an argument: cells, or a constant in the formula. */
export type Given = Ref | number | string | boolean | readonly unknown[];

/** One of our functions, asked about cells. */
export interface Ask {
  readonly contract: Contract;
  readonly given: Readonly<Record<string, Given>>;
  /** Index of the wanted cell in an answer of several, from 1. */
  readonly at?: readonly [row: number, column: number];
  /** Settings of the contract that do not affect the wanted cell. */
  readonly apartFrom?: readonly string[];
  /** In built-in syntax, where the contract has no twin and this book can do without. */
  readonly otherwise?: Formula;
}

type Piece = string | number | Ref | Ask | Formula;

/** Built-in spreadsheet syntax with references and questions in it. */
export interface Formula {
  readonly text: readonly string[];
  readonly pieces: readonly Piece[];
}

/** formula`SUM(${blanks.uptake})` */
export const formula = (text: TemplateStringsArray, ...pieces: Piece[]): Formula => ({ text: [...text], pieces });

const listed = (refs: readonly Ref[]): Formula => ({
  text: ["", ...refs.map((_, i) => (i < refs.length - 1 ? "," : ""))],
  pieces: [...refs],
});

/** Nothing until all of the cells are numbers. */
export const given = (cells: readonly Ref[], made: Formula): Formula => formula`IF(COUNT(${listed(cells)})=${cells.length},${made},"")`;

/** No shop: the question is asked as on a blank sheet. */
export const noShop = "none";

/** Asks a function; arguments it does not have are refused when the book is built. */
export function ask<C extends Contract>(
  contract: C,
  given: Partial<Record<(keyof C["args"] & string) | "shop", Given>>,
  otherwise?: Formula,
): Formula {
  return { text: ["", ""], pieces: [{ contract, given: given as Ask["given"], otherwise }] };
}

/** Asks for one cell of the first row that a function gives. */
export function askCell<C extends Contract>(
  contract: C,
  given: Partial<Record<(keyof C["args"] & string) | "shop", Given>>,
  column: number,
): Formula {
  return aroundAsk({ contract, given: given as Ask["given"], at: [1, column] });
}

/** A question as it would be typed into a cell of its own: every argument in its place. */
export function askedAs(contract: Contract, typed: readonly unknown[], otherwise?: Formula): Ask {
  const names = parameters(contract).map(([name]) => name);
  const given = typed.flatMap((value, i) => (value === undefined || value === null ? [] : [[names[i], value as Given] as const]));
  return { contract, given: { ...(contract.shop ? { shop: noShop } : {}), ...Object.fromEntries(given) }, otherwise };
}

export const isAsk = (piece: Piece): piece is Ask => typeof piece === "object" && "contract" in piece;
export const isRef = (piece: unknown): piece is Ref => typeof piece === "object" && piece !== null && "sheet" in piece;

/** A question and a formula around it. */
export const aroundAsk = (asked: Ask): Formula => ({ text: ["", ""], pieces: [asked] });

/** Every question of a formula, those inside its formulas too. */
export const asksIn = ({ pieces }: Formula): Ask[] =>
  pieces.flatMap((piece) => (isAsk(piece) ? [piece] : typeof piece === "object" && "pieces" in piece ? asksIn(piece) : []));

/** Writes questions one way: with the functions, or in built-in syntax. */
export interface Edition {
  readonly name: "live" | "plain";
  /** Undefined where this edition has no formula for the question. */
  write(ask: Ask, from: string, row: Row): string | undefined;
  /** Cells that a question depends on beside its arguments. */
  leansOn?(ask: Ask): Ref[];
}

/** A formula as one edition writes it on a sheet; undefined where a question in it has none there. */
export function written({ text, pieces }: Formula, edition: Edition, from: string, row?: Row): string | undefined {
  let out = text[0];
  for (const [i, piece] of pieces.entries()) {
    const part = isAsk(piece)
      ? edition.write(piece, from, row)
      : isRef(piece)
        ? refText(piece, from, row)
        : typeof piece === "object"
          ? written(piece, edition, from, row)
          : String(piece);
    if (part === undefined) return undefined;
    out += part + text[i + 1];
  }
  return out;
}

/** A text literal: at most 255 characters in one piece, and quotes that every program reads. */
export function textLiteral(text: string): string {
  const safe = text.replace(/"([^"]*)"/g, "“$1”").replace(/"/g, "″");
  const pieces = safe.match(/[\s\S]{1,250}/g) ?? [""];
  return pieces.map((piece) => `"${piece}"`).join("&");
}

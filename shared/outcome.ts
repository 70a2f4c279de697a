import { plainText, quoted } from "./quoted";
import { isoDate } from "./serial";
import { fromInternal, type Units } from "./unit";
import type { Kind } from "./unittable";

/** Error codes of cells. The functions make the first two; others are only handed on. */
const errorCodes = ["#VALUE!", "#N/A", "#DIV/0!", "#NAME?", "#NUM!", "#NULL!", "#REF!"] as const;
export type ErrorCode = (typeof errorCodes)[number];

const errors = new Set<unknown>(errorCodes);
export const isErrorCode = (value: unknown): value is ErrorCode => errors.has(value);

/** An error as a cell holds it. */
export interface Fault {
  readonly error: ErrorCode;
  readonly message: string;
}

/** What one cell hands in. */
export type Cell = number | string | boolean | null | undefined | Fault;

/** What one cell shows. */
export type Outcome = number | string | boolean | Fault;

export const isFault = (cell: unknown): cell is Fault => typeof cell === "object" && cell !== null && "error" in cell;

/** A quantity inside a sentence, told in the units of whoever asked. */
export interface Said {
  readonly kind: Kind;
  readonly value: number;
}
export const said = (kind: Kind, value: number): Said => ({ kind, value });

/** Numbers for reading: four digits are enough to act on and never look like false precision. */
export const tidy = (n: number): string => String(Number(n.toPrecision(Math.abs(n) >= 1e4 ? 6 : 4)));

export function sayIn(units: Units, { kind, value }: Said): string {
  if (kind === "date") return isoDate(value);
  const unit = units[kind];
  const shown = fromInternal(value, unit);
  // Temperature differences are told to a whole degree.
  if (kind === "rise") return `${Math.round(shown)} ${unit.name}`;
  if (kind === "share" && Math.abs(shown) < 1e9) return `${tidy(shown * 100)} %`;
  return unit.name ? `${tidy(shown)} ${unit.name}` : tidy(shown);
}

type Part = string | number | Said;

/** Words with quantities in them, told in the units of whoever asked. */
export class Sentence {
  constructor(
    readonly text: readonly string[],
    private readonly parts: readonly Part[],
  ) {}

  in(units: Units): string {
    return plainText(this.text.reduce((all, piece, i) => all + partIn(units, this.parts[i - 1], this.text[i - 1]) + piece));
  }
}

export const sentence = (text: TemplateStringsArray, ...parts: Part[]): Sentence => new Sentence(text, parts);

/** The reason why there is no value. Not an Error: it may be thrown for every row, and needs no stack trace. */
export class Trouble {
  constructor(
    readonly code: ErrorCode,
    private readonly text: readonly string[],
    private readonly parts: readonly Part[],
  ) {}

  /** The same trouble, told of one cell or row among many. */
  about(where: string): Trouble {
    return new Trouble(this.code, [where + this.text[0], ...this.text.slice(1)], this.parts);
  }

  in(units: Units): Fault {
    return { error: this.code, message: new Sentence(this.text, this.parts).in(units) };
  }
}

/** Quotes text that somebody typed. */
function partIn(units: Units, part: Part, before: string): string {
  if (typeof part === "object") return sayIn(units, part);
  if (typeof part === "number") return tidy(part);
  return before.endsWith("“") ? quoted(part) : part;
}

type Tag = (text: TemplateStringsArray, ...parts: Part[]) => Trouble;

/** The caller can mend it: shows as #VALUE!. */
export const badInput: Tag = (text, ...parts) => new Trouble("#VALUE!", text, parts);

/** The question has no answer: shows as #N/A. */
export const noAnswer: Tag = (text, ...parts) => new Trouble("#N/A", text, parts);

/** An error that came in with a cell goes out unchanged. */
export const handedOn = (fault: Fault): Trouble => new Trouble(fault.error, [fault.message], []);

import * as z from "zod/mini";
import type { BySheet } from "../../file/beside/piece";
import type { Beside } from "../../file/save";

/** All that a workbook of the page is made of; it can be kept as it is, and written as a file. */
export interface Content extends Beside {
  readonly book: object;
  /** The sheet that was in sight. */
  readonly shown?: string;
}

/** A record as the browser keeps it: the file that the workbook came from stands beside it, once for all its versions. */
export interface Kept extends Omit<Content, "file"> {
  readonly form: number;
  /** The digest of that file. */
  readonly file?: string;
}

/** Format version: raised when an older page could no longer read a record. */
const form = 3;

const texts = z.record(z.string(), z.string());
const record = z.looseObject({
  form: z.number().check(z.maximum(form)),
  file: z.optional(z.string()),
  book: z.looseObject({ sheets: z.array(z.looseObject({ id: z.string(), name: z.string() })).check(z.minLength(1)) }),
  documents: texts,
  print: z.record(z.string(), z.looseObject({ elements: z.array(z.string()), fits: z.boolean(), names: texts })),
  shown: z.optional(z.string()),
});

/** What a kept record turns out to be. */
export type Read =
  | { readonly state: "read"; readonly content: Content; readonly file?: string }
  /** Kept by a newer version of the page: neither shown nor changed. */
  | { readonly state: "newer" }
  | { readonly state: "damaged" };

export const toKeep = ({ file: _, ...content }: Content, file?: string): Kept => ({ form, ...content, ...(file ? { file } : {}) });

/** Until form 3 what stands beside a workbook was kept by sheets first, but for the print set-up. */
function byPiece({ sheets = {}, ...content }: Content & { readonly sheets?: BySheet<object> }): Content {
  const found: Record<string, Record<string, unknown>> = {};
  for (const [id, own] of Object.entries(sheets))
    for (const [piece, kept] of Object.entries(own)) {
      found[piece] ??= {};
      found[piece][id] = kept;
    }
  return { ...content, ...found };
}

export function fromKept(kept: unknown): Read {
  const stated = z.looseObject({ form: z.number() }).safeParse(kept);
  if (stated.success && stated.data.form > form) return { state: "newer" };
  if (!record.safeParse(kept).success) return { state: "damaged" };
  // The record itself: a parsed copy would drop a key `__proto__`.
  const { form: _, file, ...content } = kept as Kept;
  return { state: "read", content: byPiece(content), file };
}

type Sheet = { readonly id: string; readonly name: string } & Readonly<Record<string, unknown>>;

/** The cells of a workbook and their number formats alone: for an engine that fails on the rest. */
export function cellsOnly(content: Content): Content {
  const { version, sheets, formats, namedRanges } = content.book as Record<string, unknown> & { sheets: readonly Sheet[] };
  const bare = sheets.map(({ id, name, cells, formats: own, colNumber, rowNumber }) => ({
    id,
    name,
    cells,
    formats: own,
    colNumber,
    rowNumber,
  }));
  return { ...content, book: { version, sheets: bare, formats, namedRanges } };
}

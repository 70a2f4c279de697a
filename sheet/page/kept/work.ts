import * as z from "zod/mini";
import type { Beside } from "../../file/save";

/** All that a workbook of the page is made of; it can be kept as it is, and written as a file. */
export interface Content extends Beside {
  readonly book: object;
  /** The sheet that was in sight. */
  readonly shown?: string;
}

/** Counts up when an older page could no longer read what this one keeps. */
const form = 1;

const texts = z.record(z.string(), z.string());
const record = z.looseObject({
  form: z.literal(form),
  book: z.looseObject({ sheets: z.array(z.looseObject({ id: z.string(), name: z.string() })).check(z.minLength(1)) }),
  documents: texts,
  print: z.record(z.string(), z.looseObject({ elements: z.array(z.string()), fits: z.boolean(), names: texts })),
  shown: z.optional(z.string()),
});

/** What a kept record turns out to be. */
export type Read =
  | { readonly state: "read"; readonly content: Content }
  /** Left by a page newer than this one: it is neither shown nor changed. */
  | { readonly state: "newer" }
  | { readonly state: "damaged" };

export const toKeep = (content: Content): object => ({ form, ...content });

export function fromKept(kept: unknown): Read {
  const stated = z.looseObject({ form: z.number() }).safeParse(kept);
  if (stated.success && stated.data.form > form) return { state: "newer" };
  const found = record.safeParse(kept);
  if (!found.success) return { state: "damaged" };
  const { form: _, ...content } = found.data;
  return { state: "read", content: content as unknown as Content };
}

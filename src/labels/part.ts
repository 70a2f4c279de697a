import * as z from "zod/mini";
import type { Form } from "../../shared/part";
import { type LabelSizes, sizeNames } from "./sizes";

const typed = z.string().check(z.maxLength(40));
const sizes = z.object(Object.fromEntries(Object.keys(sizeNames).map((name) => [name, typed])));

/** The sizes of labels as they were typed, with the units that were typed. */
export type Typed = Readonly<Record<keyof LabelSizes, string>>;
export type LabelDocument = { readonly US?: Typed; readonly SI?: Typed };

/** Where the sizes are kept inside a workbook: they go wherever it goes. */
export const labelsForm: Form<LabelDocument> = {
  root: "labels",
  namespace: "urn:porewise:labels",
  version: 1,
  schema: z.object({ US: z.optional(sizes), SI: z.optional(sizes) }) as never,
};

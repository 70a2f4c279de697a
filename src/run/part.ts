import * as z from "zod/mini";
import type { Form } from "../../shared/part";
import { runSchema } from "./schema";

const historySchema = z.object({
  /** The run that is going on. */
  now: z.optional(runSchema),
  /** Earlier runs, the newest first. */
  earlier: z.array(runSchema),
});
export type Runs = z.infer<typeof historySchema>;

/** Where the runs are kept inside a workbook. */
export const runsForm: Form<Runs> = { root: "runs", namespace: "urn:porewise:runs", version: 1, schema: historySchema };

import * as z from "zod/mini";

/** The stages of a run, in the order of the work. */
export const stages = {
  before: "Before you start",
  mixing: "Mixing",
  vacuum: "Vacuum",
  soaking: "Soaking",
  oven: "Oven",
  after: "Afterwards",
  audience: "With an audience",
} as const;

export type Stage = keyof typeof stages;
export const stageNames = Object.keys(stages) as readonly Stage[];

/** Longest text of an item or a reason, in characters. */
export const longest = 300;
const most = 300;

const line = z.string().check(z.maxLength(longest));

const itemSchema = z.object({
  id: z.string().check(z.minLength(1), z.maxLength(60)),
  stage: z.enum(stageNames as [Stage, ...Stage[]]),
  text: line,
  why: line,
  done: z.boolean(),
});

/** The run that is going on: its day, who runs it, who stands by, and who calls for help at which number. */
const nowSchema = z.object({ when: z.union([z.iso.date(), z.literal("")]), who: line, by: line, calls: line });

/** What is kept of a run that is over: the day, who ran it, and what was left unticked. */
const recordSchema = z.object({ when: z.iso.date(), who: line, open: z.array(line).check(z.maxLength(most)) });

/** Earlier runs that stay to be read. */
export const mostRuns = 20;

const keptSchema = z.object({
  items: z.array(itemSchema).check(
    z.maxLength(most),
    z.refine((items) => new Set(items.map(({ id }) => id)).size === items.length),
  ),
  now: z.optional(nowSchema),
  runs: z.optional(z.array(recordSchema).check(z.maxLength(mostRuns))),
  onSheet: z.optional(z.literal(true)),
  /** Older lists kept one earlier run here. */
  last: z.optional(recordSchema),
});

export const noRun = { when: "", who: "", by: "", calls: "" };

export const listSchema = z.pipe(
  keptSchema,
  z.transform(
    ({ items, now = noRun, last, runs = last ? [last] : [], onSheet }): List => ({ items, now, runs, ...(onSheet && { onSheet }) }),
  ),
);

export type Item = Readonly<z.infer<typeof itemSchema>>;
export type Run = Readonly<z.infer<typeof recordSchema>>;
export type Now = Readonly<z.infer<typeof nowSchema>>;

/** The list as a person keeps it: pane, run and sheet show this one document. */
export interface List {
  readonly items: readonly Item[];
  readonly now: Now;
  /** Runs that are over, the newest first. */
  readonly runs: readonly Run[];
  /** The sheet has shown this list: any difference there was typed there. */
  readonly onSheet?: true;
}

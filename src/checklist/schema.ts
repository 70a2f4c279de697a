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

/** Longest text of an item or a reason: a line to read, not a page. */
export const longest = 300;
const most = 300;

const line = z.string().check(z.maxLength(longest));

export const itemSchema = z.object({
  id: z.string().check(z.minLength(1), z.maxLength(60)),
  stage: z.enum(stageNames as [Stage, ...Stage[]]),
  text: line,
  why: line,
  done: z.boolean(),
});

/** What is kept of a run that is over: the day, who ran it, and what was left unticked. */
export const recordSchema = z.object({ when: z.iso.date(), who: line, open: z.array(line).check(z.maxLength(most)) });

export const listSchema = z.object({
  items: z.array(itemSchema).check(
    z.maxLength(most),
    z.refine((items) => new Set(items.map(({ id }) => id)).size === items.length),
  ),
  last: z.optional(recordSchema),
});

export type Item = Readonly<z.infer<typeof itemSchema>>;
export type Run = Readonly<z.infer<typeof recordSchema>>;

/** The list as a person keeps it. */
export interface List {
  readonly items: readonly Item[];
  readonly last?: Run;
}

import * as z from "zod/mini";
import { type KindName, kindNames } from "./stepkinds";

/** A run as data: what goes in, what was worked out for it, and what was done when. Moments are milliseconds since 1970, UTC. */

export const mostLoads = 3;
export const mostKinds = 20;

const line = z.string().check(z.maxLength(300));
const size = z.number().check(z.positive(), z.lte(1e4));
const amount = z.number().check(z.gte(0), z.lte(1e9));
const moment = z.number().check(z.gte(0), z.lte(8.64e15));

const pieceSchema = z.object({
  name: line,
  wood: line,
  count: z.int().check(z.gte(1), z.lte(1e4)),
  ...{ thickness: size, width: size, length: size },
  /** One piece, oven-dry, in the unit that the scale reads. */
  dry: z.optional(amount),
  /** How full the pores of this wood get, where the Run Log knows. */
  fullness: z.optional(z.number().check(z.gte(0), z.lte(1.05))),
  /** The color that Blanks has for it, "" for none; undefined where it was typed. */
  color: z.optional(line),
});

const loadSchema = z.object({ pieces: z.array(pieceSchema).check(z.minLength(1), z.maxLength(mostKinds)) });

const stepSchema = z.object({
  id: z.string().check(z.maxLength(20)),
  kind: z.enum(kindNames as [KindName, ...KindName[]]),
  /** Which loads it is about, from 1. */
  loads: z.array(z.int().check(z.gte(1), z.lte(mostLoads))),
  /** When it begins by the plan. */
  planned: moment,
  started: z.optional(moment),
  done: z.optional(moment),
});

const cell = z.union([z.number(), z.string().check(z.maxLength(32767)), z.boolean()]);
/** A block of cells as text is typed; null leaves a cell as it is. */
const blockSchema = z.object({ at: line, cells: z.array(z.array(z.nullable(cell))) });

export const runSchema = z.object({
  id: line,
  name: line,
  system: z.enum(["US", "SI"]),
  /** The shop as it stood when the run was made: what was worked out stays comparable. */
  shop: z.array(z.tuple([line, cell])).check(z.maxLength(200)),
  chamber: z.union([size, line]),
  height: size,
  pumpRate: z.optional(amount),
  color: line,
  /** Loads that stand in the chamber at once. */
  together: z.int().check(z.gte(1), z.lte(mostLoads)),
  begins: z.object({ how: z.enum(["now", "demo"]), at: moment }),
  /** Minutes that local time is ahead of UTC. */
  offset: z.number().check(z.gte(-1440), z.lte(1440)),
  origin: moment,
  loads: z.array(loadSchema).check(z.minLength(1), z.maxLength(mostLoads)),
  /** The calculated numbers, and the reasons for those that have none, by name; "pour 2" is of load 2. */
  facts: z.record(z.string(), z.union([z.number(), line])),
  faults: z.record(z.string(), line),
  steps: z.array(stepSchema).check(z.minLength(1), z.maxLength(60)),
  /** What was weighed, read and poured, by name. */
  entries: z.record(z.string(), z.number()),
  readings: z.array(z.object({ step: line, at: moment, gauge: amount })).check(z.maxLength(500)),
  /** Counts the changes: of two copies the higher one is newer. */
  revision: z.int().check(z.gte(0)),
  /** The record in the workbook: what it wrote, what stood there before, and whether it stands. */
  record: z.optional(z.object({ at: moment, after: z.array(blockSchema), before: z.array(blockSchema), stands: z.boolean() })),
});

export type Run = z.infer<typeof runSchema>;
export type Step = z.infer<typeof stepSchema>;
export type Piece = z.infer<typeof pieceSchema>;
export type Block = z.infer<typeof blockSchema>;

export const stepOf = ({ steps }: Run, id: string): Step => {
  const found = steps.find((step) => step.id === id);
  if (!found) throw new Error(`the run has no step ${id}`);
  return found;
};

export const countIn = (run: Pick<Run, "loads">, load: number): number =>
  run.loads[load - 1].pieces.reduce((sum, { count }) => sum + count, 0);

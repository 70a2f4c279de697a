import { badInput } from "../../shared/outcome";

/** Relative tolerance of every fit: 6 in and 152.4 mm are one length. */
export const allowance = 1e-9;

/** Most pieces side by side that are counted: more of them means that a unit was mistyped. */
const mostAbreast = 500;

/** How many sides go into a stretch, `gap` apart from each other but not from its ends. */
export const abreast = (stretch: number, side: number, gap: number): number =>
  Math.max(0, Math.floor(((stretch + gap) / (side + gap)) * (1 + allowance)));

/** The stretch that so many sides take up. */
export const stretchOf = (many: number, side: number, gap: number): number => many * (side + gap) - gap;

/** Bounds the search, whatever is typed. */
export function refuseTiny(stretch: number, side: number, gap: number): void {
  if (abreast(stretch, side, gap) > mostAbreast)
    throw badInput`more than ${mostAbreast} pieces would lie side by side in the chamber: check the units of both`;
}

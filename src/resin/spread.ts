import type { Likely } from "../../shared/likely";

/** The likely range of a value that is proportional to the fullness of a run: the spread either way, never below zero. */
export const spreadOf = (value: number, spread: number): Likely => [value * Math.max(0, 1 - spread), value * (1 + spread)];

const percent = (share: number): string => `${Math.round(100 * share)}`;

/** A share with that range, in words. */
export function spreadShare(share: number, spread: number): string {
  const [least, most] = spreadOf(share, spread);
  return `about ${percent(share)} %, likely ${percent(least!)} to ${percent(most!)} %`;
}

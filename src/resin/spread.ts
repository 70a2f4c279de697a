import type { Likely } from "../../shared/likely";

/** The likely range of whatever goes with the fullness of a run: so much either way, never under nothing. */
export const spreadOf = (value: number, spread: number): Likely => [value * Math.max(0, 1 - spread), value * (1 + spread)];

const percent = (share: number): string => `${Math.round(100 * share)}`;

/** A share with that range, in words. */
export function spreadShare(share: number, spread: number): string {
  const [least, most] = spreadOf(share, spread);
  return `about ${percent(share)} %, likely ${percent(least!)} to ${percent(most!)} %`;
}

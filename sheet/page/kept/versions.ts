/** Versions to go back to: the newest, beyond them the last of as many sessions, and the last of each day. */
export const recent = 10;
export const days = 14;
const spell = 5 * 60_000;

/** The newest of each group, newest group first. */
function lastOfEach(newestFirst: readonly number[], groupOf: (moment: number) => unknown): number[] {
  const last = new Map<unknown, number>();
  for (const moment of newestFirst) if (!last.has(groupOf(moment))) last.set(groupOf(moment), moment);
  return [...last.values()];
}

/**
 * The versions to delete, given the moments of all.
 * @param dayOf the day that a moment falls on, as the person's calendar has it
 */
export function toForget(moments: readonly number[], dayOf: (moment: number) => string): number[] {
  const newestFirst = [...moments].sort((a, b) => b - a);
  const stays = new Set([
    ...newestFirst.slice(0, recent),
    ...lastOfEach(newestFirst, (moment) => Math.floor(moment / spell)).slice(0, recent),
    ...lastOfEach(newestFirst, dayOf).slice(0, days),
  ]);
  return newestFirst.filter((moment) => !stays.has(moment));
}

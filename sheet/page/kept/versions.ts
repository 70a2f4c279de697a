/** Versions to go back to: the newest, and beyond them the last of each day. */
export const recent = 10;
export const days = 14;

/**
 * Those that make way, of the moments at which versions were kept.
 * @param dayOf the day that a moment falls on, as the person's calendar has it
 */
export function toForget(moments: readonly number[], dayOf: (moment: number) => string): number[] {
  const newestFirst = [...moments].sort((a, b) => b - a);
  const daily = new Map<string, number>();
  for (const moment of newestFirst) if (!daily.has(dayOf(moment))) daily.set(dayOf(moment), moment);
  const stays = new Set([...newestFirst.slice(0, recent), ...[...daily.values()].slice(0, days)]);
  return newestFirst.filter((moment) => !stays.has(moment));
}

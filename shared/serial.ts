/** Days as spreadsheets count them (1900 date system). Serials under 61 are refused at the border: programs disagree about them. */
const dayZero = Date.UTC(1899, 11, 30);
const msPerDay = 86_400_000;

const serialOf = (year: number, month: number, day: number): number => Math.round((Date.UTC(year, month, day) - dayZero) / msPerDay);

/** ISO 8601 text, `2026-03-14` or `2026-03-14 09:30`, as a serial; undefined for anything else. */
export function readDate(text: string): number | undefined {
  const found = /^(\d{4})-(\d\d)-(\d\d)(?:[T ](\d\d):(\d\d))?$/.exec(text);
  if (!found) return undefined;
  const [year, month, day, hour, minute] = found.slice(1).map((part) => Number(part ?? 0));
  const at = new Date(Date.UTC(year, month - 1, day));
  if (at.getUTCMonth() !== month - 1 || at.getUTCDate() !== day || hour > 23 || minute > 59) return undefined;
  return serialOf(year, month - 1, day) + (hour * 60 + minute) / 1440;
}

/** The year, month (0 to 11) and day of a serial's date part. */
export function dateOf(serial: number): { year: number; month: number; day: number } {
  const at = new Date(dayZero + Math.floor(serial) * msPerDay);
  return { year: at.getUTCFullYear(), month: at.getUTCMonth(), day: at.getUTCDate() };
}

/** EDATE as OpenFormula 6.10.5 has it: both truncated, months added, a day the month lacks becomes its last. */
export function edate(serial: number, months: number): number {
  const { year, month, day } = dateOf(serial);
  const target = month + Math.trunc(months);
  const last = new Date(Date.UTC(year, target + 1, 0)).getUTCDate();
  return serialOf(year, target, Math.min(day, last));
}

/** A serial as Americans write a day: 3/14/2026. */
export function usDate(serial: number): string {
  const { year, month, day } = dateOf(serial);
  return `${month + 1}/${day}/${year}`;
}

/** A serial as ISO text, for sentences. */
export function isoDate(serial: number): string {
  return new Date(dayZero + Math.floor(serial) * msPerDay).toISOString().slice(0, 10);
}

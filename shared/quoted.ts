/** Most characters of a typed text that a message repeats. */
const longest = 60;

/** Text without control characters, invisible characters and marks of the writing direction. */
export const plainText = (text: string): string => text.replace(/[\p{Cc}\p{Zl}\p{Zp}]+/gu, " ").replace(/[\p{Cf}\p{Cs}]+/gu, "");

/** What somebody typed, as a message repeats it: plain, trimmed, and cut where it is long. */
export function quoted(text: string): string {
  // Cut first: a cell may hold a whole page.
  const plain = plainText(text.slice(0, 4 * longest)).trim();
  return plain.length > longest || text.length > 4 * longest ? `${plainText(plain.slice(0, longest))}…` : plain;
}

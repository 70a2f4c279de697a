export const two = (value: number): string => String(value).padStart(2, "0");

/** The day by the person's own calendar, as ISO 8601 writes it. */
export function today(): string {
  const now = new Date();
  return [now.getFullYear(), now.getMonth() + 1, now.getDate()].map(two).join("-");
}

const isoDay = "yyyy-mm-dd";

/** Days as they are written in the US, with a clock of twelve hours: each format of the sheets, and what stands for it there. */
const american: readonly (readonly [iso: string, us: string])[] = [
  [isoDay, "m/d/yyyy"],
  ["yy-mm-dd", "m/d/yy"],
  ["mm-dd", "m/d"],
  ["hh:mm", "h:mm AM/PM"],
];

/** A number format of the US edition. */
export const inUs = (format: string): string => american.reduce((all, [iso, us]) => all.replace(iso, us), format);

/** The format of a day within a text that a formula makes. */
export const dayIn = (system: "US" | "SI"): string => (system === "US" ? inUs(isoDay) : isoDay);

/** How a day is typed, as an example in a sentence. */
export const dayExample = (system: "US" | "SI"): string => (system === "US" ? "3/14/2026" : "2026-03-14");

/** The same of a day and hour. */
export const momentExample = (system: "US" | "SI"): string => `${dayExample(system)} ${system === "US" ? "2:00 PM" : "14:00"}`;

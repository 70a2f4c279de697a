/**
 * Number formats of cells to type into, as files write them. None of them is “General”, so that a program that takes a typed
 * value for a date, a fraction or a clock time keeps the cell's own.
 */
export const fractions = "# ??/??";
export const plainNumber = "General;-General";
/** An hour of the day as a number, or a clock time, which is a part of a day. */
export const hourOrClock = "[<1]h:mm AM/PM;General";

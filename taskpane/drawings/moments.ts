import { dateOf } from "../../shared/serial";
import type { System } from "../../shared/unittable";
import { day, dayOf } from "../../src/plan/clock";

/** Moments of a plan are seconds from the midnight before its first day, whose serial it may know. */
export interface Dated {
  readonly midnight: number | undefined;
}

const days = ["Sun", "Mon", "Tue", "Wed", "Thu", "Fri", "Sat"];
const months = ["Jan", "Feb", "Mar", "Apr", "May", "Jun", "Jul", "Aug", "Sep", "Oct", "Nov", "Dec"];

/** A day as people say it; a plan without a start counts its days. */
export function dayName({ midnight }: Dated, at: number, system: System): string {
  if (midnight === undefined) return `Day ${at + 1}`;
  const { year, month, day: date } = dateOf(midnight + at);
  const weekday = days[new Date(Date.UTC(year, month, date)).getUTCDay()];
  return system === "US" ? `${weekday}, ${months[month]} ${date}` : `${weekday} ${date} ${months[month]}`;
}

/** "8 AM", "12:30 PM"; "08:00" where hours are counted to 24. */
export function clockName(minutes: number, system: System): string {
  const hour = Math.floor(minutes / 60);
  const past = String(minutes % 60).padStart(2, "0");
  if (system === "SI") return `${String(hour).padStart(2, "0")}:${past}`;
  return `${hour % 12 || 12}${minutes % 60 ? `:${past}` : ""} ${hour % 24 < 12 ? "AM" : "PM"}`;
}

/** Day and hour, to the nearest minute. */
export function momentName(dated: Dated, seconds: number, system: System): string {
  const minutes = Math.round(seconds / 60);
  const at = dayOf(minutes * 60);
  return `${dayName(dated, at, system)}, ${clockName(minutes - at * (day / 60), system)}`;
}

/** Hours from the start of a plan that has no dates. */
export const hoursIn = (seconds: number): string => `hour ${Math.round(seconds / 360) / 10}`;

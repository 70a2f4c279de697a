import { two } from "../today";

/** Moments and durations as a person reads them off a wall clock. */

const minute = 60_000;

type System = "US" | "SI";

const isSameDay = (a: Date, b: Date) => a.toDateString() === b.toDateString();

/** "2:10 PM", and with the day where it is another one: "Sun 8 AM". */
export function clockTime(at: number, system: System, now = Date.now()): string {
  const date = new Date(at);
  const time =
    system === "US"
      ? date.toLocaleTimeString("en-US", { hour: "numeric", minute: "2-digit" }).replace("\u202f", " ")
      : `${two(date.getHours())}:${two(date.getMinutes())}`;
  if (isSameDay(date, new Date(now))) return time;
  const far = Math.abs(at - now) > 6 * 24 * 60 * minute;
  const day = far ? dayOf(at) : date.toLocaleDateString("en-US", { weekday: "short" });
  return `${day} ${time}`;
}

/** "Mar 14". */
export const dayOf = (at: number): string => new Date(at).toLocaleDateString("en-US", { month: "short", day: "numeric" });

/** "1 h 42 min", "12 min". */
export function spell(milliseconds: number): string {
  const minutes = Math.max(0, Math.round(milliseconds / minute));
  const days = Math.floor(minutes / 1440);
  if (days > 1) return `${days} days`;
  const hours = Math.floor(minutes / 60);
  const rest = minutes % 60;
  return hours ? `${hours} h${rest ? ` ${rest} min` : ""}` : `${rest} min`;
}

/** "1:42:10" left, or "0:12" over. */
export function countdown(milliseconds: number): string {
  const seconds = Math.abs(milliseconds < 0 ? Math.floor(milliseconds / 1000) : Math.ceil(milliseconds / 1000));
  const hours = Math.floor(seconds / 3600);
  const minutes = Math.floor(seconds / 60) % 60;
  return hours ? `${hours}:${two(minutes)}:${two(seconds % 60)}` : `${minutes}:${two(seconds % 60)}`;
}

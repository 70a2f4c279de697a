import type { Arg } from "./argument";
import { placesFor, placesOf } from "./measured";
import { fromInternal, type Units } from "./unit";

/** The likely range of an answer, in internal units; an end that cannot be worked out is left open. */
export type Likely = readonly [least: number | undefined, most: number | undefined];

/** A guess as a person says it: “about 45 min, likely 33 to 80”. */
export function sayLikely(of: Arg, format: string, middle: number, [least, most]: Likely, units: Units): string {
  const unit = of.kind ? units[of.kind] : undefined;
  const percent = of.kind === "share";
  const plain = (value: number) => (unit ? fromInternal(value, unit) : value) * (percent ? 100 : 1);
  const known = [middle, least, most].filter((value) => value !== undefined).map(plain);
  // Whole minutes and whole percents stay whole: no guess is better than that.
  const places = placesOf(format) === 0 ? (Math.abs(plain(middle)) < 1 ? placesFor(known, format) : 0) : placesFor([plain(middle)], format);
  const say = (value: number) => String(Number(plain(value).toFixed(places)) + 0);
  const about = percent ? `${say(middle)} %` : unit?.name ? `${say(middle)} ${unit.name}` : say(middle);
  const tail = percent ? " %" : "";
  if (most === undefined && least !== undefined && say(least) === say(middle)) return `${about} or more`;
  if (least === undefined && most === undefined) return `about ${about}`;
  if (most === undefined) return `about ${about}, likely ${say(least!)}${tail} or more`;
  if (least === undefined) return `about ${about}, likely ${say(most)}${tail} or less`;
  if (say(least) === say(most)) return `about ${about}`;
  return `about ${about}, likely ${say(least)} to ${say(most)}${tail}`;
}

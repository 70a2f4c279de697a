import type { Arg } from "./argument";
import { placesFor, toPlaces } from "./measured";
import { fromInternal, type Units } from "./unit";

/** The likely range of an answer, in internal units; an end that cannot be worked out is left open. */
export type Likely = readonly [least: number | undefined, most: number | undefined];

/** A guess as a person says it: “about 45 min, likely 33 to 80”. */
export function sayLikely(of: Arg, format: string, middle: number, [least, most]: Likely, units: Units): string {
  const unit = of.kind ? units[of.kind] : undefined;
  const percent = of.kind === "share";
  const plain = (value: number) => (unit ? fromInternal(value, unit) : value) * (percent ? 100 : 1);
  const ends = [least, most].filter((value) => value !== undefined).map(plain);
  const places = placesFor(plain(middle), format, ends);
  const say = (value: number) => toPlaces(plain(value), places);
  const about = percent ? `${say(middle)} %` : unit?.name ? `${say(middle)} ${unit.name}` : say(middle);
  const tail = percent ? " %" : "";
  if (most === undefined && least !== undefined && say(least) === say(middle)) return `${about} or more`;
  if (least === undefined && most === undefined) return `about ${about}`;
  if (most === undefined) return `about ${about}, likely ${say(least!)}${tail} or more`;
  if (least === undefined) return `about ${about}, likely ${say(most)}${tail} or less`;
  if (say(least) === say(most)) return `about ${about}`;
  return `about ${about}, likely ${say(least)} to ${say(most)}${tail}`;
}

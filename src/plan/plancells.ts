import { noAnswer, type Trouble } from "../../shared/outcome";
import { dayAndTime } from "./calendar";
import { day } from "./clock";
import type { Plan, Planned } from "./planned";

/** Most characters that a cell holds. */
const mostText = 32_000;

/** What is in a load: "10 box elder, 2 maple". */
export function contentOf({ shares }: Planned): string {
  const counts = new Map<string, number>();
  for (const { part, count } of shares) counts.set(part.row.label, (counts.get(part.row.label) ?? 0) + count);
  const all = [...counts].map(([label, count]) => `${count} ${label}`).join(", ");
  return all.length <= mostText ? all : `${all.slice(0, all.lastIndexOf(", ", mostText))} and more`;
}

/** A moment as the value of a cell: a serial, or words where the plan has no dates. */
export const momentOf = ({ midnight }: Pick<Plan, "midnight">, seconds: number): number | string =>
  midnight === undefined ? dayAndTime(seconds) : midnight + seconds / day;

/** Use-by of a load's resin as the value of a cell. */
export const useByOf = ({ midnight }: Plan, { useBy }: Planned): number | string | Trouble =>
  typeof useBy === "number" && midnight === undefined ? `day ${useBy}` : useBy;

/** Hours and minutes past the moment at which all should have been done; undefined in good time. */
export function lateBy({ midnight }: Plan, { done }: Planned, readyBy: number | undefined): Trouble | undefined {
  if (readyBy === undefined || midnight === undefined) return undefined;
  const minutes = Math.round((midnight + done / day - readyBy) * 1440);
  if (midnight + done / day <= readyBy + 1e-9 || minutes < 1) return undefined;
  return noAnswer`late by ${String(Math.floor(minutes / 60))} h ${String(minutes % 60)} min`;
}

/** Seconds that the chamber is in use: the vacuum of each pull, or from loading to taking out where the chamber itself holds the resin. */
export function chamberSeconds({ tub, loads, pulls }: Plan, vacuum: number): number {
  return tub.beside ? pulls * vacuum : loads.reduce((sum, load) => sum + load.out - load.in, 0);
}

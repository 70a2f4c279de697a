import { noAnswer, type Trouble } from "../../shared/outcome";
import { isoDate } from "../../shared/serial";
import { dyeToAdd } from "../resin/dyetopup";
import { useBy } from "../resin/expiry";
import { packetsFor } from "../resin/mix";
import { attempt, isTrouble } from "./attempt";

/** Mixed resin that stands in the shop. */
export interface Tub {
  readonly fluid: number;
  /** Dye in it, volume to volume. */
  readonly strength: number;
  /** The day its oldest part was mixed; unknown where it is empty, or where the plan has no dates. */
  readonly since?: number;
}

/** What one load does to the tub. */
export interface Entry {
  readonly mixed: number;
  readonly packets: number;
  /** Dye to add, or how much too strong the fluid is. */
  readonly dye: number | Trouble;
  readonly drips: number;
  readonly left: number;
  /** Last day of its oldest part, or why the load must not go into it. */
  readonly useBy: number | Trouble | undefined;
}

export interface Use {
  /** Fluid that the chamber wants. */
  readonly fluid: number;
  readonly uptake: number;
  /** Fluid that clings to the pieces and is lost, if there is as much. */
  readonly drips: number;
  /** Days of going in and coming out, serials; none where the plan has no dates. */
  readonly days?: { readonly in: number; readonly out: number };
}

export interface Habits {
  readonly packetMakes: number;
  readonly dyeRate: number;
  readonly catalyzedMonths: number;
}

/** The day until which the resin is good, if the load is out by then. */
function goodUntil(since: number, out: number, months: number): number {
  const last = useBy(since, months);
  if (out > last + 1 + 1e-9)
    throw noAnswer`mix afresh: the resin on hand is good until ${isoDate(last)}, and the load comes out on ${isoDate(out)}`;
  return last;
}

/** One load: what is on hand is used first, packets make up the rest, and what the wood does not keep goes back. */
export function enter(
  tub: Tub,
  { fluid, uptake, drips, days }: Use,
  { packetMakes, dyeRate, catalyzedMonths }: Habits,
): { tub: Tub; entry: Entry } {
  const { packets, mixed } = packetsFor(fluid, tub.fluid, packetMakes);
  const dye = attempt(() => dyeToAdd(tub.fluid, tub.strength, mixed, dyeRate));
  const whole = tub.fluid + mixed;
  const strength = isTrouble(dye) ? (tub.fluid * tub.strength) / whole : dyeRate;
  const since = tub.since ?? (days && Math.floor(days.in + 1e-9));
  const lost = Math.min(drips, Math.max(0, whole - uptake));
  const left = Math.max(0, whole - uptake - lost);
  const empty = left <= whole * 1e-9;
  return {
    tub: { fluid: left, strength, since: empty ? undefined : since },
    entry: {
      mixed,
      packets,
      dye,
      drips: lost,
      left,
      useBy: days && since !== undefined ? attempt(() => goodUntil(since, days.out, catalyzedMonths)) : undefined,
    },
  };
}

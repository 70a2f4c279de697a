import type { Sides } from "../../src/cure/block";
import { atCore, atFace } from "../../src/cure/block";
import { coolEnough, coolingSlabs } from "../../src/cure/cooldown";
import { baking, slabsOf, temperatureAt } from "../../src/cure/heating";
import { type Slab, term } from "../../src/cure/slab";
import type { Read } from "../given";

/** A piece that warms or cools: temperatures in °C, times in seconds. */
export interface Warming {
  readonly sides: Sides;
  readonly slabs: readonly Slab[];
  readonly first: number;
  /** What it stands in: the oven, or the room's air. */
  readonly bath: number;
  /** The core temperature to reach, or to cool to. */
  readonly target?: number;
  /** End of the curve, and the moment of the cross-section, seconds. */
  readonly until: number;
  readonly sawn: number;
  readonly cooling: boolean;
}

/** Temperatures at a moment: in the middle and on the widest face. */
export const temperatures = ({ slabs, sides, bath, first }: Warming, seconds: number) => ({
  core: temperatureAt(bath, first, atCore(slabs, seconds)),
  skin: temperatureAt(bath, first, atFace(slabs, sides, seconds)),
});

/** The share of the first temperature difference left at `at`, from 0 in the middle to 1 at the surface: `remaining`, for any place. */
export function shareAt(slab: Slab, seconds: number, at: number): number {
  const fourier = slab.pace * seconds;
  if (fourier < 1e-4) return 1;
  let share = 0;
  for (let n = 0; n < 200; n++) {
    const { zeta, c } = term(slab, n);
    const size = c * Math.exp(-(zeta ** 2) * fourier);
    share += size * Math.cos(zeta * at);
    if (Math.abs(size) < 1e-9) break;
  }
  return Math.min(1, Math.max(0, share));
}

const wholeMinute = (seconds: number) => Math.max(60, Math.round(seconds / 60) * 60);

/** The warming or cooling that a call of an oven function describes. */
export function warmingOf({ contract, given }: Read): Warming | undefined {
  const g = given as any;
  const piece = { sides: g as Sides };
  if (contract.name === "COOLDOWN") {
    const slabs = coolingSlabs(g);
    const target = g.to ?? coolEnough(g.room);
    const until = (contract.run(given) as number) * 1.25;
    if (!(until > 0)) return undefined;
    return { ...piece, slabs, first: g.oven, bath: g.room, target, until, sawn: wholeMinute(until / 4), cooling: true };
  }
  const slabs = () => ({ slabs: slabsOf(g, g.ovenSurfaceCoefficient), first: g.room, bath: g.oven, cooling: false });
  if (contract.name === "BAKE" || contract.name === "BAKECURVE") {
    const until = baking(g, g);
    return { ...piece, ...slabs(), target: g.core, until, sawn: wholeMinute(until / 3) };
  }
  if (contract.name === "CORETEMP") {
    if (!(g.minutes > 0)) return undefined;
    return { ...piece, ...slabs(), until: g.minutes, sawn: g.minutes };
  }
  return undefined;
}

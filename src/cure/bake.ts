import { optional, quantity } from "../../shared/argument";
import { define } from "../../shared/contract";
import { badInput, noAnswer, said } from "../../shared/outcome";
import { as } from "../../shared/quantity";
import { cell } from "../../shared/result";
import { fullness } from "../resin/settings";
import { gravityArg } from "../wood/voids";
import { block, type Piece, secondsTo, stuffOf } from "./block";
import { core, hold, oven, ovenSurfaceCoefficient, room, shortestBake, thickest } from "./settings";

const side = (label: string, example: number) => quantity("length", label, example, [0.01, 200]);

/** The piece as the oven functions take it; the grain runs along the length. */
export const pieceArgs = {
  thickness: side("thickness", 0.75),
  width: optional(side("width", 0.75)),
  length: optional(side("length", 5)),
  gravity: optional(gravityArg),
};

export const ovenSettings = { oven, room, ovenSurfaceCoefficient, fullness, thickest };

/** Gravity of a wood that nobody named: from memory, a middling soft hardwood. */
export const middlingGravity = 0.4;

interface Oven {
  readonly oven: number;
  readonly room: number;
  readonly ovenSurfaceCoefficient: number;
  readonly fullness: number;
  readonly thickest: number;
}

type Sides = { thickness: number; width?: number; length?: number };

export const pieceOf = ({ thickness, width, length }: Sides): Piece => ({ thickness, width, length });

/** A piece so thick that the resin's own heat takes over is not for a calculation of the oven's. */
export function refuseThick({ thickness, width = thickness, length = width }: Sides, limit: number): void {
  if (Math.min(thickness, width, length) > limit * (1 + 1e-9))
    throw noAnswer`the resin's own heat takes over in a piece this thick: follow the maker's schedule`;
}

/** The share of the oven's lead over the room that is left when the core is up to temperature. */
export function coreTarget({ oven, room, core }: { oven: number; room: number; core: number }): number {
  if (core >= oven)
    throw badInput`core must be cooler than the oven: ${said("temperature", core)} is not below ${said("temperature", oven)}`;
  if (room >= core)
    throw badInput`room must be cooler than the core: ${said("temperature", room)} is not below ${said("temperature", core)}`;
  return (oven - core) / (oven - room);
}

/** Seconds until the core is up to temperature, by conduction alone. */
function heating(given: Sides & Oven & { core: number; gravity?: number }, k: "k" | "least" | "most" = "k", h = 1, cooler = 0): number {
  const stuff = stuffOf(given.gravity ?? middlingGravity, given.fullness);
  const sides = block(pieceOf(given), given.ovenSurfaceCoefficient * h, stuff[k], stuff.heat);
  return secondsTo(sides, coreTarget({ ...given, oven: given.oven - cooler }));
}

const coolerOven = (5 * 5) / 9;

/** Minutes in the oven until the core has come to temperature and been held there, not under the shortest bake. */
export const bake = define({
  name: "BAKE",
  per: "piece",
  asks: "How long must it bake?",
  args: pieceArgs,
  shop: { ...ovenSettings, core, hold, shortestBake },
  returns: cell(quantity("minutes", "minutes in the oven", 41.7)),
  format: "0",
  equation: "time at which the core has {core} in an oven at {oven}, from {room}; plus {hold}; at least {shortestBake}",
  source:
    "heat conduction in a block, the product of slab series: Incropera, 5.5 and 5.8; wood: Wood Handbook, FPL-GTR-282 (2021), eq. 4-17 and ch. 4; resin as PMMA (k 0.19 W/mK, 1190 kg/m³, 1470 J/kgK); shortest bake: common practice, no source",
  accuracy:
    "common practice says about 30 minutes for small pieces and up to an hour for larger ones at 200 °F; conduction says more for pieces over about 1 1/4 in, and more again for foil-wrapped or crowded ones. The resin's own heat of cure and the oven's swing are not in it: the maker's label decides",
  cautions: ["oven", "resin"],
  worked: { typed: [0.75, 0.75, 5, 0.4], gives: 41.76224502556663 },
  trust: (given) => {
    const extra = given.hold;
    const floor = (seconds: number) => Math.max(seconds + extra, given.shortestBake);
    const slow = given.core < given.oven - coolerOven ? floor(heating(given, "least", 2 / 3, coolerOven)) : undefined;
    return [floor(heating(given, "most", 1.5)), slow];
  },
  run: (given) => {
    refuseThick(given, given.thickest);
    return as(Math.max(heating(given) + given.hold, given.shortestBake));
  },
});

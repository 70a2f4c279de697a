import { optional, quantity } from "../../shared/argument";
import { noAnswer, said } from "../../shared/outcome";
import { gravityArg } from "../wood/voids";
import { type Sides, sidesOf } from "./block";

const side = (label: string, example: number) => quantity("length", label, example, [0.01, 200]);

/** The piece as the oven functions take it; the grain runs along the length. */
export const pieceArgs = {
  thickness: side("thickness", 0.75),
  width: optional(side("width", 0.75)),
  length: optional(side("length", 5)),
  gravity: optional(gravityArg),
};

/** A rule of the shop, no law of nature: the resin heats itself at any thickness, and the more the thicker the piece. */
export function refuseThick(sides: Sides, thickest: number): void {
  if (Math.min(...sidesOf(sides)) > thickest * (1 + 1e-9))
    throw noAnswer`too thick to bake by calculation (over ${said("length", thickest)}, the setting “thickest”): follow the maker's schedule`;
}

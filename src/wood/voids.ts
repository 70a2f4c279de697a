import { optional, quantity } from "../../shared/argument";
import { define } from "../../shared/contract";
import { noAnswer, said } from "../../shared/outcome";
import { as } from "../../shared/quantity";
import { cell } from "../../shared/result";
import { unless } from "../../shared/twin";

/** Specific gravity of the cell wall substance: Wood Handbook, FPL-GTR-282 (2021), eq. 4-3. */
export const wallGravity = 1.54;

export const gravityArg = quantity("gravity", "oven-dry specific gravity", 0.45, [0.05, wallGravity]);
/** Gravity assumed for an unnamed wood, from memory: a medium soft hardwood. */
export const middlingGravity = 0.4;

export const moistureShare = quantity("share", "moisture, oven-dry basis", 0.12, [0, 3]);

/** Moisture above which water fills pores and no longer swells the wall: Wood Handbook ch. 4. */
const saturation = 0.3;

/** Specific gravity on the volume that the piece has at a moisture, from the oven-dry one: Wood Handbook, FPL-GTR-282 (2021), eqs. 4-9 and 4-13. */
export function atMoisture(gravity: number, moisture: number): number {
  if (moisture === 0) return gravity;
  const green = gravity / (1 + 0.265 * gravity);
  return green / (1 - 0.265 * green * Math.max(0, 1 - moisture / saturation));
}

/** Share of a piece as it is that is neither cell wall nor water. */
export const voidShare = (gravity: number, moisture: number, wall = wallGravity): number =>
  1 - atMoisture(gravity, moisture) * (1 / wall + moisture);

/** The same in built-in spreadsheet syntax: Gb / (1 − 0.265 Gb (1 − M/0.30)) with Gb = G / (1 + 0.265 G) is G / (1 + 0.265 G min(1, M/0.30)). */
export const voidTwin = `(1-{gravity}/(1+0.265*{gravity}*MIN(1,{moisture}/${saturation}))*(1/${wallGravity}+{moisture}))`;

/** The least that authors put the cell wall at (from memory). */
export const leastWall = 1.5;

/** Share of a piece's volume, as it is, that is empty: 1 − G_M (1/1.54 + M). */
export const voids = define({
  name: "VOIDS",
  per: "piece",
  asks: "How much of the wood is empty space?",
  args: { gravity: gravityArg, moisture: optional(moistureShare, 0) },
  returns: cell(quantity("share", "void share", 0.708)),
  format: "0%",
  equation: "1 − {atMoisture} × (1/1.54 + {moisture})",
  source:
    "derived from the cell wall's 1.54 of Wood Handbook, FPL-GTR-282 (2021), eq. 4-3; specific gravity at a moisture by eqs. 4-9 and 4-13: up to 30 % water swells the wall and fills no pore",
  accuracy:
    "the cell wall is put at 1.50 to 1.54 by different authors (from memory), which moves the share by up to 0.02; some voids cannot be reached",
  cautions: [],
  worked: { typed: [0.45], gives: 0.707792207792208 },
  twin: unless(`${voidTwin}<=1E-9`, voidTwin),
  steps: ({ gravity, moisture }) => ({ atMoisture: said("gravity", atMoisture(gravity, moisture)) }),
  trust: ({ gravity, moisture }) => [Math.max(0, voidShare(gravity, moisture, leastWall)), voidShare(gravity, moisture)],
  run: ({ gravity, moisture }) => {
    const share = voidShare(gravity, moisture);
    if (share <= 1e-9) throw noAnswer`no empty space is left at this gravity and moisture: dry the wood first`;
    return as(share);
  },
});

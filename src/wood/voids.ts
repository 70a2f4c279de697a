import { optional, quantity } from "../../shared/argument";
import { define } from "../../shared/contract";
import { noAnswer } from "../../shared/outcome";
import { as } from "../../shared/quantity";
import { cell } from "../../shared/result";
import { unless } from "../../shared/twin";

/** Specific gravity of the cell wall substance: Wood Handbook, FPL-GTR-282 (2021), eq. 4-3. */
export const wallGravity = 1.54;

export const gravityArg = quantity("gravity", "oven-dry specific gravity", 0.45, [0.05, wallGravity]);
/** Gravity of a wood that nobody named, from memory: a middling soft hardwood. */
export const middlingGravity = 0.4;

export const moistureShare = quantity("share", "moisture, oven-dry basis", 0.12, [0, 3]);

/** Share of a piece that is neither cell wall nor water, both on the oven-dry volume. */
export const voidShare = (gravity: number, moisture: number, wall = wallGravity): number => 1 - gravity * (1 / wall + moisture);

/** The same in built-in spreadsheet syntax. */
export const voidTwin = `(1-{gravity}*(1/${wallGravity}+{moisture}))`;

/** The least that authors put the cell wall at (from memory). */
const leastWall = 1.5;

/** Share of a piece's volume that is empty: 1 − G (1/1.54 + M). */
export const voids = define({
  name: "VOIDS",
  per: "piece",
  asks: "How much of the wood is empty space?",
  args: { gravity: gravityArg, moisture: optional(moistureShare, 0) },
  returns: cell(quantity("share", "void share", 0.708)),
  format: "0%",
  equation: "1 − {gravity} × (1/1.54 + {moisture})",
  source: "derived from the cell wall's 1.54 of Wood Handbook, FPL-GTR-282 (2021), eq. 4-3",
  accuracy:
    "the cell wall is put at 1.50 to 1.54 by different authors (from memory), which moves the share by up to 0.02; some voids cannot be reached",
  cautions: [],
  worked: { typed: [0.45], gives: 0.707792207792208 },
  twin: unless(`${voidTwin}<=1E-9`, voidTwin),
  trust: ({ gravity, moisture }) => [Math.max(0, voidShare(gravity, moisture, leastWall)), voidShare(gravity, moisture)],
  run: ({ gravity, moisture }) => {
    const share = voidShare(gravity, moisture);
    if (share <= 1e-9) throw noAnswer`no empty space is left at this gravity and moisture: dry the wood first`;
    return as(share);
  },
});

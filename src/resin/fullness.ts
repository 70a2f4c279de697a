import { optional, quantity } from "../../shared/argument";
import { define } from "../../shared/contract";
import { noAnswer, said } from "../../shared/outcome";
import { as } from "../../shared/quantity";
import { cell } from "../../shared/result";
import { unless } from "../../shared/twin";
import { gravityArg, leastWall, moistureShare, voidShare } from "../wood/voids";
import { drips, resinDensity } from "./settings";
import { noRoomTwin, pieceVolume, roomForResin, roomTwin } from "./uptake";
import { beforeArg, drainedArg, gained } from "./weights";

/** So far above full is measuring error; anything above that is a mistake. */
const fullest = 1.05;

/** A volume out of three sides, each measured to 1 %. */
const measuring = 0.03;

/** Share of the voids that resin filled: the weight gained as a volume of resin, divided by the voids. */
export const fullness = define({
  name: "FULLNESS",
  per: "piece",
  asks: "How full did the pores get?",
  args: { before: beforeArg, drained: drainedArg, solids: pieceVolume, gravity: gravityArg, moisture: optional(moistureShare, 0) },
  shop: { resinDensity, drips },
  returns: cell(quantity("share", "share of the voids filled", 0.57)),
  format: "0%",
  equation: "({drained} − {before}) / {resinDensity} / ({solids} × {voids})",
  source:
    "Wood Handbook, FPL-GTR-282 (2021), eqs. 4-3, 4-9 and 4-13 for the voids; a pore-filling ratio as in Wood Science and Technology (2017), doi 10.1007/s00226-017-0933-6; resin density from memory: the label decides",
  accuracy:
    "within a few hundredths: a film of resin left on the piece counts as filled, and some voids cannot be reached. The likely range: each side measured to 1 %, the cell wall at 1.50 to 1.54, and a film as thick as “drips” on the faces of a cube of that volume",
  cautions: ["resin", "wet wood"],
  worked: { typed: [24, 49, 104, 0.45], gives: 0.5704377728563548 },
  twin: unless(
    `OR({drained}<{before}*(1-1E-9),${noRoomTwin()},({drained}-{before})/{resinDensity}>${fullest}*${roomTwin()}*(1+1E-9))`,
    `MAX(0,{drained}-{before})/{resinDensity}/${roomTwin()}`,
  ),
  steps: ({ before, drained, solids, gravity, moisture, resinDensity }) => ({
    voids: said("share", voidShare(gravity, moisture)),
    "resin taken up": said("fluid", Math.max(0, drained - before) / resinDensity),
    "room for it": said("fluid", roomForResin(solids, gravity, moisture)),
  }),
  trust: ({ before, drained, solids, gravity, moisture, resinDensity, drips }) => {
    const resin = Math.max(0, drained - before) / resinDensity;
    const film = drips * 6 * solids ** (2 / 3);
    return [
      Math.max(0, resin - film) / (solids * (1 + measuring) * voidShare(gravity, moisture)),
      resin / (solids * (1 - measuring) * voidShare(gravity, moisture, leastWall)),
    ];
  },
  run: ({ before, drained, solids, gravity, moisture, resinDensity }) => {
    const fluid = gained(drained, before, "weight drained is lighter than before") / resinDensity;
    const share = fluid / roomForResin(solids, gravity, moisture);
    if (share > fullest * (1 + 1e-9))
      throw noAnswer`more resin than there is room for, ${said("share", share)} of it: check the volume and gravity`;
    return as(share);
  },
});

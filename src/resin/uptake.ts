import { optional, quantity } from "../../shared/argument";
import { define } from "../../shared/contract";
import { noAnswer, said } from "../../shared/outcome";
import { as } from "../../shared/quantity";
import { cell } from "../../shared/result";
import { unless } from "../../shared/twin";
import { atMoisture, gravityArg, moistureShare, voidShare, voidTwin } from "../wood/voids";
import { fullness, fullnessSpread, resinDensity } from "./settings";
import { spreadOf, spreadShare } from "./spread";

export const pieceVolume = quantity("volume", "volume of the wood", 104, [0.001, 1e6]);

/** Moisture above which wood takes up hardly any resin: fiber saturation, Wood Handbook ch. 4. */
const wettest = 0.3;

/** Volume left for resin in a piece, cubic meters; wet wood has none to give. */
export function roomForResin(volume: number, gravity: number, moisture: number): number {
  if (moisture > wettest * (1 + 1e-9)) throw noAnswer`too wet to take resin: dry it first`;
  const share = voidShare(gravity, moisture);
  if (share <= 1e-9) throw noAnswer`no empty space is left at this gravity and moisture: the wood takes nothing`;
  return volume * share;
}

/** The same in built-in spreadsheet syntax, and the condition under which it has no answer. */
export const roomTwin = (): string => `({solids}*${voidTwin})`;
export const noRoomTwin = (): string => `{moisture}>${wettest}*(1+1E-9),${voidTwin}<=1E-9`;

/** Resin that the wood takes up: volume × void share × fullness. */
export const uptake = define({
  name: "UPTAKE",
  per: "piece",
  asks: "How much resin will the wood take?",
  args: { solids: pieceVolume, gravity: gravityArg, fullness, moisture: optional(moistureShare, 0) },
  shop: { fullnessSpread, resinDensity },
  returns: cell(quantity("fluid", "resin the wood takes up", 0.765)),
  format: "0.00",
  equation: "{solids} × {voids} × {fullness}",
  source:
    "Wood Handbook, FPL-GTR-282 (2021), eqs. 4-3, 4-9 and 4-13 for the voids, as VOIDS has them; fullness from memory: calibrate with FULLNESS",
  accuracy:
    "the voids are good to a few percent; how full they get is not known beforehand. Dense, tight-grained wood takes little, punky wood much (common practice, no source). The likely range is the setting “fullness spread”: 45 % either way, or the spread of your own Run Log",
  cautions: ["resin", "wet wood"],
  worked: { typed: [104, 0.45], gives: 0.7647832686793725 },
  twin: unless(`OR(${noRoomTwin()})`, `${roomTwin()}*{fullness}`),
  steps: ({ gravity, fullness, moisture, resinDensity, fullnessSpread }) => {
    const voids = voidShare(gravity, moisture);
    const gain = (voids * fullness * resinDensity) / (atMoisture(gravity, moisture) * (1 + moisture) * 1000);
    return { voids: said("share", voids), "weight gain to expect, before the bake": spreadShare(gain, fullnessSpread) };
  },
  trust: ({ solids, gravity, fullness, moisture, fullnessSpread }) =>
    spreadOf(roomForResin(solids, gravity, moisture) * fullness, fullnessSpread),
  run: ({ solids, gravity, fullness, moisture }) => as(roomForResin(solids, gravity, moisture) * fullness),
});

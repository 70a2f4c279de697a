import { optional, quantity } from "../../shared/argument";
import { define } from "../../shared/contract";
import { noAnswer } from "../../shared/outcome";
import { as } from "../../shared/quantity";
import { cell } from "../../shared/result";
import { unless } from "../../shared/twin";
import { gravityArg, moistureShare, voidShare, voidTwin } from "../wood/voids";
import { fullness } from "./settings";

export const pieceVolume = quantity("volume", "volume of the wood", 104, [0.001, 1e6]);

/** Moisture past which wood takes no resin worth the name: fibre saturation, Wood Handbook ch. 4. */
const wettest = 0.3;

/** Volume left for resin in a piece, cubic metres; wet wood has none to give. */
export function roomForResin(volume: number, gravity: number, moisture: number): number {
  if (moisture > wettest * (1 + 1e-9)) throw noAnswer`the wood is too wet to take resin: dry it first`;
  const share = voidShare(gravity, moisture);
  if (share <= 1e-9) throw noAnswer`no empty space is left at this gravity and moisture: the wood takes nothing`;
  return volume * share;
}

/** The same in built-in spreadsheet syntax, and where it has no answer. */
export const roomTwin = (): string => `({solids}*${voidTwin})`;
export const noRoomTwin = (): string => `{moisture}>${wettest}*(1+1E-9),${voidTwin}<=1E-9`;

/** Fluid that the wood takes up: volume × void share × fullness. */
export const uptake = define({
  name: "UPTAKE",
  per: "piece",
  asks: "How much resin will the wood take?",
  args: { solids: pieceVolume, gravity: gravityArg, fullness, moisture: optional(moistureShare, 0) },
  shop: {},
  returns: cell(quantity("fluid", "resin taken up", 0.765)),
  format: "0.00",
  equation: "{solids} × (1 − {gravity} × (1/1.54 + {moisture})) × {fullness}",
  source: "Wood Handbook, FPL-GTR-282 (2021), eq. 4-3 for the voids; fullness from memory: calibrate with FULLNESS",
  accuracy:
    "the voids are good to a few percent, fullness is not known beforehand: dense tight-grained wood takes little, punky wood much (common practice, no source)",
  cautions: ["resin", "wet wood"],
  worked: { typed: [104, 0.45], gives: 0.7647832686793725 },
  twin: unless(`OR(${noRoomTwin()})`, `${roomTwin()}*{fullness}`),
  run: ({ solids, gravity, fullness, moisture }) => as(roomForResin(solids, gravity, moisture) * fullness),
});

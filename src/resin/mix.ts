import { count, quantity } from "../../shared/argument";
import { define } from "../../shared/contract";
import type { Likely } from "../../shared/likely";
import { said } from "../../shared/outcome";
import { as, type Quantity } from "../../shared/quantity";
import { row } from "../../shared/result";
import { fullnessSpread, packetMakes, resinOnHand } from "./settings";
import { spreadOf } from "./spread";

const slack = 1e-9;

/** Whole packets that make up what is missing, and the resin they make. */
export function packetsFor(need: number, onHand: number, makes: number): { packets: number; mixed: number } {
  const short = need - onHand;
  const packets = short <= need * slack ? 0 : Math.ceil((short / makes) * (1 - slack));
  return { packets, mixed: packets * makes };
}

const packetsTwin = "IF({need}-{onHand}<={need}*1E-9,0,ROUNDUP(({need}-{onHand})/{packetMakes}*(1-1E-9),0))";
const mixedTwin = `${packetsTwin}*{packetMakes}`;

/** How much to mix: what is missing, up to whole packets, so that the rest keeps its long shelf life. */
export const mix = define({
  name: "MIX",
  per: "call",
  asks: "How much do I mix?",
  args: { need: quantity("fluid", "resin needed", 2.3, [0, 1e6]), onHand: resinOnHand },
  shop: { packetMakes, fullnessSpread },
  returns: row({
    mixed: quantity("fluid", "to mix", 2),
    packets: count("packets", 2, [0, 1e9]),
    left: quantity("fluid", "resin left over", 0.2),
  }),
  format: { mixed: "0.00", packets: "0", left: "0.00" },
  equation: "{need} − {onHand}, never under 0, rounded up to whole packets of {packetMakes}",
  source: "common practice, no source: mix only what is missing, because unmixed resin keeps for years and mixed resin for months",
  accuracy:
    "exact for the numbers given. What the wood takes is a guess: the likely range comes from the setting “fullness spread”. A packet split by eye is not exact",
  cautions: ["resin", "storage"],
  worked: { typed: [2.3, 0.5], gives: [2, 2, 0.2] },
  twin: { mixed: mixedTwin, packets: packetsTwin, left: `MAX(0,{onHand}+${mixedTwin}-{need})` },
  steps: ({ need, onHand }) => ({ missing: said("fluid", Math.max(0, need - onHand)) }),
  trust: ({ need, onHand, packetMakes, fullnessSpread }) => {
    // The leftover is a sawtooth of the need, since packets are whole: the need itself is tried as well as both ends of its range.
    const tried = [...spreadOf(need, fullnessSpread), need].map((end) => ({ need: end!, ...packetsFor(end!, onHand, packetMakes) }));
    const range = (of: (end: (typeof tried)[number]) => number): Likely => {
      const all = tried.map(of);
      return [Math.min(...all), Math.max(...all)];
    };
    return {
      mixed: range(({ mixed }) => mixed),
      packets: range(({ packets }) => packets),
      left: range(({ need, mixed }) => Math.max(0, onHand + mixed - need)),
    };
  },
  run: ({ need, onHand, packetMakes }) => {
    const { packets, mixed } = packetsFor(need, onHand, packetMakes);
    return {
      mixed: as<Quantity<"fluid">>(mixed),
      packets: as<Quantity<"count">>(packets),
      left: as<Quantity<"fluid">>(Math.max(0, onHand + mixed - need)),
    };
  },
});

import { optional, quantity } from "../../shared/argument";
import { define } from "../../shared/contract";
import { badInput, said, sentence } from "../../shared/outcome";
import { as } from "../../shared/quantity";
import { cell } from "../../shared/result";
import { unless } from "../../shared/twin";
import { fullnessSpread } from "../resin/settings";
import { spreadOf } from "../resin/spread";
import { allowance } from "./abreast";
import { areaOf, chamberArg } from "./section";
import { cover } from "./settings";

export const stackArg = quantity("length", "height of the stack of pieces", 5, [0.01, 200]);
export const solidsArg = quantity("volume", "volume of pieces and submerged ballast", 104, [0, 1e6]);

const bathTwin = "PI()*{chamber}^2/4*({stack}+{cover})";

/** Resin to pour so that the pieces stay covered to the end: A (stack + cover) − solids + uptake. */
export const fill = define({
  name: "FILL",
  per: "call",
  asks: "How much resin covers the pieces?",
  args: {
    chamber: chamberArg,
    stack: stackArg,
    solids: solidsArg,
    uptake: optional(quantity("fluid", "resin the wood will take up", 0.77, [0, 1e6]), 0),
  },
  shop: { cover, fullnessSpread },
  returns: cell(quantity("fluid", "resin to pour", 1.14)),
  format: "0.00",
  equation: "{area} × ({stack} + {cover}) − {solids} + {uptake}",
  source: "geometry; cover: common practice, no source",
  accuracy:
    "as good as your measurements. Without uptake it only covers the pieces at the start: the wood will take more. The likely range comes from the uptake (the setting “fullness spread”)",
  cautions: ["chamber", "resin"],
  worked: { typed: [6, 5, 104], gives: 1.136727329763616 },
  twin: unless(`{solids}>${bathTwin}*(1+1E-9)`, `MAX(0,${bathTwin}-{solids})+{uptake}`),
  steps: ({ chamber, uptake }) => ({
    area: said("area", areaOf(chamber)),
    ...(uptake === 0 && { uptake: "0 (covers at the start; the wood will take more)" }),
  }),
  trust: ({ chamber, stack, solids, uptake, cover, fullnessSpread }) => {
    if (uptake === 0) return undefined;
    const [least, most] = spreadOf(uptake, fullnessSpread);
    const poured = Math.max(0, areaOf(chamber) * (stack + cover) - solids);
    return [poured + least!, poured + most!];
  },
  beside: ({ uptake }) => (uptake === 0 ? [sentence`This covers the pieces at the start; the wood will take more.`] : []),
  run: ({ chamber, stack, solids, uptake, cover }) => {
    const bath = areaOf(chamber) * (stack + cover);
    if (solids > bath * (1 + allowance))
      throw badInput`solids of ${said("volume", solids)} do not fit: up to the cover the chamber holds ${said("volume", bath)}`;
    return as(Math.max(0, bath - solids) + uptake);
  },
});

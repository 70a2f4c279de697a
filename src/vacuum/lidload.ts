import { type Arg, optional, quantity } from "../../shared/argument";
import { define } from "../../shared/contract";
import { noAnswer } from "../../shared/outcome";
import { cell } from "../../shared/result";
import { text } from "../../shared/words";
import { seaLevel } from "./atmosphere";
import { acrylic, castAcrylic, designTwin, materialArg } from "./material";
import { deflection, deflectionTwin, stress, stressTwin } from "./plate";
import { lidLimit } from "./settings";

/** All that a lid can be told for it. */
const notRuledOut = "not ruled out (this is no approval)";

/** Full vacuum inside on a day of high pressure at sea level, wherever the shop stands: lids travel. */
const pressure = seaLevel * 1.03;

const sizes = {
  diameter: quantity("length", "diameter of the chamber's lid inside the seal", 6, [0.5, 200]),
  thickness: quantity("length", "thickness of the lid", 0.75, [0.01, 20]),
};

/** True in built-in syntax where a number is not what the function would take: a blank must never pass for a lid that holds. */
const isOutside = (name: string, { range }: Arg): string => `{${name}}<${range![0]},{${name}}>${range![1]}`;

/** The verdict in built-in syntax: no answer where the lid is refused. */
function verdictTwin(): string {
  const lid = { ...acrylic, a: "({diameter}/2)", t: "{thickness}" };
  const refused = [
    isOutside("diameter", sizes.diameter),
    isOutside("thickness", sizes.thickness),
    isOutside("lidLimit", lidLimit),
    `${stressTwin(lid, String(pressure))}/${designTwin("{material}")}>={lidLimit}*(1-1E-9)`,
    `${deflectionTwin(lid, String(pressure))}>{thickness}/2*(1+1E-9)`,
  ];
  return `IF(OR(${refused.join(",")}),NA(),"${notRuledOut}")`;
}

/** Rules out a bare flat lid that full vacuum would load too far: a screen that can only say no. */
export const lidLoad = define({
  name: "LIDLOAD",
  per: "call",
  asks: "Is this lid too weak?",
  args: { ...sizes, material: optional(materialArg) },
  shop: { lidLimit },
  returns: cell(text("verdict", notRuledOut)),
  format: "General",
  equation:
    "do not pump if 3 (3 + 0.35)/8 × 104.4 kPa × ({diameter} / 2 / {thickness})² reaches the lid limit of the design stress of {kind}, or if the middle sinks by over half the thickness",
  source:
    "Timoshenko and Woinowsky-Krieger, Theory of Plates and Shells, a round flat plate simply supported (Roark, table 11.2, case 10a); continuous design stress of cast acrylic 1500 psi and extruded acrylic 750 psi, E 450,000 psi: makers' data, read in public pages; full vacuum inside, outside the sea-level pressure of the US Standard Atmosphere, 1976, and 3 % for weather, whatever the altitude",
  accuracy:
    "it can only rule a lid out. It approves nothing: holes, notches, scratches, heat, solvent and aging are not in it; use a chamber made and rated for vacuum. It is about the vacuum chamber's own lid, never a tub's",
  cautions: ["lid", "chamber"],
  worked: { typed: [6, 0.75], gives: notRuledOut },
  twin: verdictTwin(),
  steps: ({ material }) => ({ kind: (material ?? castAcrylic).name }),
  run: ({ diameter, thickness, material = castAcrylic, lidLimit }) => {
    const lid = { a: diameter / 2, t: thickness, ...acrylic };
    if (stress(lid, pressure) / material.design >= lidLimit * (1 - 1e-9))
      throw noAnswer`do not pump: this lid is too weak for full vacuum by the lid limit; use a chamber and lid made and rated for vacuum`;
    if (deflection(lid, pressure) > (thickness / 2) * (1 + 1e-9))
      throw noAnswer`do not pump: the lid would sink by more than half its thickness; use a chamber and lid made and rated for vacuum`;
    return notRuledOut;
  },
});

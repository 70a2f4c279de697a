import { type Arg, optional, quantity } from "../../shared/argument";
import { define } from "../../shared/contract";
import { noAnswer, said } from "../../shared/outcome";
import { as, type Quantity } from "../../shared/quantity";
import { row } from "../../shared/result";
import { text } from "../../shared/words";
import { airArgs, airPressure, airSettings, airSource, airStep, airTwin } from "./air";
import { acrylic, castAcrylic, designTwin, materialArg } from "./material";
import { deflection, deflectionTwin, stress, stressTwin } from "./plate";
import { lidLimit } from "./settings";

/** All that a lid can be told for it. */
const notRefused = "not ruled out (this is no approval)";

const outside =
  "it certifies nothing: holes, notches, scratches, heat, solvent and ageing are not in it; use a chamber made and rated for vacuum";

/** The cell holds the number for whoever asks for it; the working leads nobody to build on it. */
const shareCell: Arg<Quantity<"share">> = {
  ...quantity("share", "share of the published design stress", 0.197),
  say: () => "in its cell only: it certifies nothing",
};

const sizes = {
  diameter: quantity("length", "diameter of the lid inside the seal", 6, [0.5, 200]),
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
    isOutside("here", airSettings.here),
    `AND({barometer}<>0,OR(${isOutside("barometer", airSettings.barometer)}))`,
    `${stressTwin(lid, airTwin)}/${designTwin("{material}")}>={lidLimit}*(1-1E-9)`,
    `${deflectionTwin(lid, airTwin)}>{thickness}/2*(1+1E-9)`,
  ];
  return `IF(OR(${refused.join(",")}),NA(),"${notRefused}")`;
}

/** Share of the published design stress that a bare flat lid would bear: a screen that can only say no. */
export const lidLoad = define({
  name: "LIDLOAD",
  per: "call",
  asks: "Must this lid be refused?",
  args: {
    ...sizes,
    material: optional(materialArg),
    ...airArgs,
  },
  shop: { ...airSettings, lidLimit },
  returns: row({
    verdict: text("verdict", notRefused),
    share: shareCell,
  }),
  format: { verdict: "General", share: "0%" },
  equation:
    "do not pump if 3 (3 + 0.35)/8 × {air} × ({diameter} / 2 / {thickness})² is {lidLimit} or more of the design stress of {kind}, or if the middle sinks by over half the thickness",
  source: `Timoshenko and Woinowsky-Krieger, Theory of Plates and Shells, a round flat plate simply supported (Roark, table 11.2, case 10a); continuous design stress of cast acrylic 1500 psi and extruded acrylic 750 psi, E 450,000 psi: makers' data, read in public pages; full vacuum inside; ${airSource}`,
  accuracy: `a screen that can only say no; ${outside}`,
  cautions: ["lid", "chamber"],
  worked: { typed: [6, 0.75], gives: [notRefused, 0.19692571359188024] },
  twin: { verdict: verdictTwin() },
  steps: (given) => ({ ...airStep(given), kind: (given.material ?? castAcrylic).name }),
  run: (given) => {
    const { diameter, thickness, material = castAcrylic, lidLimit } = given;
    const air = airPressure(given);
    const lid = { a: diameter / 2, t: thickness, ...acrylic };
    const share = stress(lid, air) / material.design;
    const refused =
      share >= lidLimit * (1 - 1e-9)
        ? noAnswer`do not pump: the bare lid would bear ${said("share", lidLimit)} or more of its published design stress; use a chamber and lid made and rated for vacuum`
        : deflection(lid, air) > (thickness / 2) * (1 + 1e-9)
          ? noAnswer`do not pump: the lid would sink by more than half its thickness; use a chamber and lid made and rated for vacuum`
          : undefined;
    return { verdict: refused ?? notRefused, share: refused ?? as<Quantity<"share">>(share) };
  },
});

import { type Arg, optional, quantity, text } from "../../shared/argument";
import { define } from "../../shared/contract";
import { noAnswer, said } from "../../shared/outcome";
import { as, type Quantity } from "../../shared/quantity";
import { row } from "../../shared/result";
import { airArgs, airPressure, airSettings, airSource, airStep } from "./air";
import { acrylic, castAcrylic, materialArg } from "./material";
import { deflection, stress } from "./plate";
import { lidLimit } from "./settings";

/** All that a lid can be told for it. */
const notRefused = "not refused, which proves nothing";

const outside =
  "it certifies nothing: holes, notches, scratches, heat, solvent and ageing are not in it; use a chamber made and rated for vacuum";

/** The cell holds the number for whoever asks for it; the working leads nobody to build on it. */
const shareCell: Arg<Quantity<"share">> = {
  ...quantity("share", "share of the published design stress", 0.197),
  say: () => "in its cell only: it certifies nothing",
};

/** Share of the published design stress that a bare flat lid would bear: a screen that can only say no. */
export const lidLoad = define({
  name: "LIDLOAD",
  per: "call",
  asks: "Must this lid be refused?",
  args: {
    diameter: quantity("length", "diameter of the lid inside the seal", 6, [0.5, 200]),
    thickness: quantity("length", "thickness of the lid", 0.75, [0.01, 20]),
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

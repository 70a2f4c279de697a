import { quantity } from "../../shared/argument";
import { define } from "../../shared/contract";
import { noAnswer, said } from "../../shared/outcome";
import { as } from "../../shared/quantity";
import { cell } from "../../shared/result";
import { unless } from "../../shared/twin";
import { allowance } from "./abreast";
import { solidsArg } from "./fill";
import { resinArg } from "./fluidlevel";
import { areaOf, chamberArg } from "./section";
import { foamRoom } from "./settings";

export const heightArg = quantity("length", "inside height of the chamber", 10, [0.1, 200]);

const freeTwin = "({height}-({resin}+{solids})/(PI()*{chamber}^2/4))";

/** Free height above the resin: height − (V + solids) / A; refused where the foam needs more. */
export const headroom = define({
  name: "HEADROOM",
  per: "call",
  asks: "Is there room for the foam?",
  args: { chamber: chamberArg, height: heightArg, resin: resinArg, solids: solidsArg },
  shop: { foamRoom },
  returns: cell(quantity("length", "free height above the resin", 4)),
  format: "0.00",
  equation: "{height} − ({resin} + {solids}) / {area}, at least {foamRoom} × {height}",
  source: "geometry; foam room from memory",
  accuracy: "exact for your measurements; how high the foam climbs is not calculated: pump slowly and watch it",
  cautions: ["chamber", "resin"],
  worked: { typed: [6, 10, 1.14, 104], gives: 3.9933156088862116 },
  twin: unless(`${freeTwin}<({foamRoom}-1E-9)*{height}`, `MAX(0,${freeTwin})`),
  steps: ({ chamber, height, foamRoom }) => ({
    area: said("area", areaOf(chamber)),
    "the foam needs": said("length", foamRoom * height),
  }),
  run: ({ chamber, height, resin, solids, foamRoom }) => {
    const area = areaOf(chamber);
    const free = height - (resin + solids) / area;
    const needed = foamRoom * height;
    if (free < -allowance * height) throw noAnswer`the chamber overflows by ${said("fluid", -free * area)}: pour less or take pieces out`;
    if (free < needed - allowance * height)
      throw noAnswer`the foam needs ${said("length", needed)} and only ${said("length", Math.max(0, free))} is free: take out ${said("fluid", (needed - free) * area)}`;
    return as(Math.max(0, free));
  },
});

import { type Sentence, said, sentence } from "../../shared/outcome";
import { middlingGravity } from "../wood/voids";
import type { Resin } from "./filled";
import type { Wood } from "./heating";
import { selfHeating } from "./rise";

/** Where the oven's numbers come from, for resin of one kind or another. */
export const conductionSource = ({ density, heat, basis }: Resin): string =>
  `heat conduction in a block, the product of slab series: Incropera, 5.5 and 5.8; wood: Wood Handbook, FPL-GTR-282 (2021), eq. 4-17 and ch. 4; resin conducts like cast acrylic, 0.19 W/mK; it warms by ${density} kg/m³ × ${heat} J/kgK (${basis})`;

export const notInIt = "the resin's own heat and the swing of the oven are not in it: the maker's label decides";

/** How often the likely range of a bake holds: test/src/cure/simulated.test.ts has the simulation. */
export const rangeHolds =
  "About 9 outcomes in 10 lie in the likely range: a simulation of wood, resin, surface, oven and room together, all within what is known of them.";

/** The most that common practice bakes, seconds. */
export const practice = 60 * 60;

export const inPractice =
  "Common practice bakes 30 to 60 minutes. Heat conduction alone takes longer here, but the resin's own heat speeds the core up, so practice bakes such pieces shorter. Test one piece: sticky means bake again.";

/** What the resin's own heat does, wherever a bake is shown. */
export const ownHeat = "expect the core above the oven's temperature, the more the thicker the piece; smoke means take it out";

export const ownHeatOf = ({ gravity = middlingGravity, fullness, heatOfCure }: Wood & { readonly heatOfCure: number }): Sentence =>
  sentence`The resin heats itself, by up to ${said("rise", selfHeating(gravity, fullness, heatOfCure))} if none of its heat got out: ${ownHeat}.`;

import { type Sentence, said, sentence } from "../../shared/outcome";
import { middlingGravity } from "../wood/voids";
import type { Resin } from "./filled";
import type { Wood } from "./heating";
import { selfHeating } from "./rise";

/** Where the oven's numbers come from, for resin of one kind or another. */
export const conductionSource = ({ density, heat, basis }: Resin): string =>
  `heat conduction in a block, the product of slab series: Incropera, 5.5 and 5.8; wood: Wood Handbook, FPL-GTR-282 (2021), eq. 4-17 and ch. 4; resin conducts like cast acrylic, 0.19 W/mK; it warms by ${density} kg/m³ × ${heat} J/kgK (${basis})`;

export const notInIt = "the resin's own heat and the oven's temperature swings are not in it: the maker's label decides";

/** How often the likely range of a bake holds: test/src/cure/simulated.test.ts has the simulation. */
export const rangeHolds =
  "About 9 bakes in 10 fall in the likely range, in a simulation that varies wood, resin, surface, oven and room within what is known of them.";

/** The longest bake of common practice, seconds. */
export const practice = 60 * 60;

export const inPractice =
  "Common practice is 30 to 60 minutes. By heat conduction alone this piece takes longer, but the resin's own heat speeds the core up. Test one piece: if it is sticky, bake it again.";

/** What the resin's own heat does, wherever a bake is shown. */
export const ownHeat = "expect the core to get hotter than the oven, the more so in a thick piece; if it smokes, take it out";

export const ownHeatOf = ({ gravity = middlingGravity, fullness, heatOfCure }: Wood & { readonly heatOfCure: number }): Sentence =>
  sentence`The resin heats itself, by up to ${said("rise", selfHeating(gravity, fullness, heatOfCure))} if none of its heat got out: ${ownHeat}.`;

import { nearest } from "../../shared/nearest";
import { noAnswer } from "../../shared/outcome";
import { speciesRows, speciesSources } from "./speciestable";

/** Other names in use for one and the same tabled wood. */
const also: Readonly<Record<string, string>> = {
  "tulip poplar": "Yellow-poplar",
  tuliptree: "Yellow-poplar",
  "red alder": "Alder, red",
  "bald cypress": "Baldcypress",
  redwood: "Redwood, old-growth",
  "Douglas fir": "Douglas-fir, coast",
};

export interface Species {
  /** As people say it: "silver maple". */
  readonly name: string;
  /** Specific gravity: oven-dry mass on green volume, and on volume at 12 %, over water's. */
  readonly green: number;
  readonly at12: number | undefined;
  /** Volumetric shrinkage from green to oven-dry, a share; undefined where the table has none. */
  readonly shrinkage: number | undefined;
  readonly source: string;
}

/** Handbook names whose second part says it all. */
const whole = new Set(["eastern redcedar", "western redcedar", "balsam poplar", "cucumbertree", "pecan"]);

/** A name as it stands inside a sentence; a proper name keeps its capital. */
const uncapitalised = (name: string): string =>
  /^(American|California|Douglas|Ohio|Oregon|Osage|Pacific)/.test(name) ? name : name.toLowerCase();

/** "Maple, silver" as people say it. */
function spoken(name: string): string {
  const [kind, which] = name.split(",").map((part) => part.trim());
  if (!which) return uncapitalised(kind);
  return whole.has(which) ? which : `${which} ${uncapitalised(kind)}`;
}

/** "silver maple" as an index lists it. */
const listed = (name: string): string => name.replace(/^(.*) (\S+)$/, "$2, $1");

const squash = (name: string) => name.toLowerCase().replace(/[^a-z0-9]/g, "");

const species = speciesRows.map(([name, green, at12, shrinkage, source]): Species & { handbook: string } => ({
  handbook: name,
  name: spoken(name),
  green,
  at12,
  shrinkage: shrinkage === undefined ? undefined : shrinkage / 100,
  source: speciesSources[source],
}));

const known = new Map<string, Species>();
for (const wood of species) {
  for (const name of [wood.handbook, wood.name, listed(wood.name)]) known.set(squash(name), wood);
  // As it is mostly typed: found without another look.
  known.set(wood.name, wood);
}
for (const [name, handbook] of Object.entries(also)) known.set(squash(name), known.get(squash(handbook))!);

export const speciesNames: readonly string[] = species.map(({ name }) => name);

/** The wood a name stands for, in any case, either word order, with or without spaces, hyphens and commas. */
export function findSpecies(name: string): Species {
  const found = known.get(name) ?? known.get(squash(name));
  if (found) return found;
  const near = nearest(spoken(name), speciesNames);
  throw near.length
    ? noAnswer`no wood called “${name}” is in the tables: the nearest are ${near.join(", ")}`
    : noAnswer`no wood called “${name}” is in the tables: weigh and measure it with PIECEGRAVITY`;
}

/** Shrinkage to oven-dry where the table has none: S0 = 26.5 Gb % (FPL-GTR-282, eq. 4-12). */
const shrinkageOf = ({ green, shrinkage }: Species): number => shrinkage ?? 0.265 * green;

/** Specific gravity on volume at a moisture below fibre saturation (30 %): Gx = Gb / (1 − Sx), Sx = S0 (1 − x/30) (eqs. 4-9 and 4-11). */
export const gravityAt = (wood: Species, moisture: number): number => wood.green / (1 - shrinkageOf(wood) * (1 - moisture / 0.3));

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
  "hedge apple": "Osage-orange",
  "bois d'arc": "Osage-orange",
  "California bay": "California laurel",
  myrtlewood: "California laurel",
  "Alaska yellow cedar": "Cedar, yellow",
};

/** Names of the trade for several tabled woods: Wood Handbook, ch. 2, from memory. */
const trade: Readonly<Record<string, readonly string[]>> = {
  "hard maple": ["sugar maple", "black maple"],
  "soft maple": ["silver maple", "red maple", "bigleaf maple", "boxelder"],
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
  /** The shrinkage is from memory. */
  readonly fromMemory: boolean;
}

/** Handbook names whose second part is a whole name. */
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

const species = speciesRows.map(([name, green, at12, shrinkage, source, from]): Species & { handbook: string } => ({
  handbook: name,
  name: spoken(name),
  green,
  at12,
  shrinkage: shrinkage === undefined ? undefined : shrinkage / 100,
  source: speciesSources[source],
  fromMemory: from === "memory",
}));

const known = new Map<string, Species>();
for (const wood of species) {
  for (const name of [wood.handbook, wood.name, listed(wood.name)]) known.set(squash(name), wood);
  // The usual spelling is found without folding.
  known.set(wood.name, wood);
}
for (const [name, handbook] of Object.entries(also)) known.set(squash(name), known.get(squash(handbook))!);

export const speciesNames: readonly string[] = species.map(({ name }) => name);

/** Usual names and spellings beside those of the tables, as people type them. */
export const otherNames: readonly string[] = ["box elder", "honey locust", "osage orange", ...Object.keys(also)];

/** The name as a list or index has it: "maple, silver". */
export const indexed = (name: string): string => listed(name);

/** The one name of a wood, however it is spelled; undefined where it is none of the tables. */
export const nameOf = (spelled: string): string | undefined => known.get(squash(spelled))?.name;

/** Every spelling that is taken, without case, spaces and marks, with the wood that it stands for. */
export const spellings: readonly (readonly [spelling: string, name: string])[] = [
  ...new Map([...known].map(([spelling, { name }]) => [squash(spelling), name])),
];

/** Woods that a name takes together: "maple", "red oak", "soft maple". */
function membersOf(name: string): readonly string[] {
  const wanted = squash(spoken(name));
  const group = Object.entries(trade).find(([word]) => squash(word) === wanted);
  if (group) return group[1];
  const isMember = ({ handbook, name }: (typeof species)[number]) => {
    const words = name.split(/[\s-]+/);
    return squash(handbook.split(",")[0]) === wanted || words.some((_, i) => i > 0 && squash(words.slice(i).join("")) === wanted);
  };
  return wanted ? species.filter(isMember).map(({ name }) => name) : [];
}

/** The wood a name stands for, in any case, either word order, with or without spaces, hyphens and commas. */
export function findSpecies(name: string): Species {
  const found = known.get(name) ?? known.get(squash(name));
  if (found) return found;
  const members = membersOf(name);
  if (members.length) throw noAnswer`“${name}” is not one wood: type ${members.length > 1 ? "one of " : ""}${members.join(", ")}`;
  const near = nearest(spoken(name), speciesNames);
  throw near.length
    ? noAnswer`no wood called “${name}” is in the tables: the nearest are ${near.join(", ")}`
    : noAnswer`no wood called “${name}” is in the tables: weigh and measure it with PIECEGRAVITY`;
}

/**
 * Shrinkage to oven-dry, a share: tabled, else what the tabled pair of gravities shows, S0 = (1 − Gb/G12)/0.6 (FPL-GTR-282,
 * eqs. 4-9 and 4-11), and where there is no pair S0 = 26.5 Gb % (eq. 4-12).
 */
const shrinkageOf = ({ green, at12, shrinkage }: Species): number =>
  shrinkage ?? (at12 === undefined ? 0.265 * green : (1 - green / at12) / 0.6);

/** Specific gravity on volume at a moisture below fiber saturation (30 %): Gx = Gb / (1 − Sx), Sx = S0 (1 − x/30) (eqs. 4-9 and 4-11). */
export const gravityAt = (wood: Species, moisture: number): number => wood.green / (1 - shrinkageOf(wood) * (1 - moisture / 0.3));

import { nearest } from "../../shared/nearest";
import { noAnswer } from "../../shared/outcome";

/** Where a row was read. All are transcriptions of the publication named: nobody here opened its own pages. */
export const speciesSources = {
  b: "Wood Handbook, FPL-GTR-282 (2021), Table 5-3b, read in a public transcription",
  a: "Wood Handbook, FPL-GTR-282 (2021), Table 5-3a, read in a public transcription",
  old: "Wood Handbook, FPL-GTR-190 (2010), Table 5-3b, read as page text",
  fia: "USDA Forest Service, FIA reference table of species (Miles and Smith 2009, NRS-38), not in the Handbook's Table 5-3",
} as const;

/** Handbook name, specific gravity on green volume, the same at 12 %, volumetric shrinkage in percent, source. */
type Row = readonly [
  name: string,
  green: number,
  at12: number | undefined,
  shrinkage: number | undefined,
  source: keyof typeof speciesSources,
];

// biome-ignore format: a table reads best a species a line
const rows: readonly Row[] = [
  ["Alder, red", 0.37, 0.41, 12.6, "b"],
  ["Ash, black", 0.45, 0.49, 15.2, "b"],
  ["Ash, blue", 0.53, 0.58, 11.7, "b"],
  ["Ash, green", 0.53, 0.56, 12.5, "b"],
  ["Ash, Oregon", 0.5, 0.55, 13.2, "b"],
  ["Ash, white", 0.55, 0.6, 13.3, "b"],
  ["Aspen, bigtooth", 0.36, 0.39, 11.8, "b"],
  ["Aspen, quaking", 0.35, 0.38, 11.5, "b"],
  ["Basswood, American", 0.32, 0.37, 15.8, "b"],
  ["Beech, American", 0.56, 0.64, 17.2, "b"],
  ["Birch, paper", 0.48, 0.55, 16.2, "b"],
  ["Birch, sweet", 0.6, 0.65, 15.6, "b"],
  ["Birch, yellow", 0.55, 0.62, 16.8, "b"],
  ["Butternut", 0.36, 0.38, 10.6, "b"],
  ["Cherry, black", 0.47, 0.5, 11.5, "b"],
  ["Chestnut, American", 0.4, 0.43, 11.6, "b"],
  ["Cottonwood, balsam poplar", 0.31, 0.34, 10.5, "b"],
  ["Cottonwood, black", 0.31, 0.35, 12.4, "b"],
  ["Cottonwood, eastern", 0.37, 0.4, 13.9, "b"],
  ["Elm, American", 0.46, 0.5, 14.6, "b"],
  ["Elm, rock", 0.57, 0.63, 14.9, "b"],
  ["Elm, slippery", 0.48, 0.53, 13.8, "b"],
  ["Hackberry", 0.49, 0.53, 13.8, "b"],
  ["Hickory, bitternut", 0.6, 0.66, undefined, "b"],
  ["Hickory, pecan", 0.6, 0.66, 13.6, "b"],
  ["Hickory, mockernut", 0.64, 0.72, 17.8, "b"],
  ["Hickory, pignut", 0.66, 0.75, 17.9, "b"],
  ["Hickory, shagbark", 0.64, 0.72, undefined, "b"],
  ["Hickory, shellbark", 0.62, 0.69, undefined, "b"],
  ["Honeylocust", 0.6, undefined, undefined, "b"],
  ["Locust, black", 0.66, 0.69, undefined, "b"],
  ["Magnolia, cucumbertree", 0.44, 0.48, undefined, "b"],
  ["Magnolia, southern", 0.46, 0.5, undefined, "b"],
  ["Maple, bigleaf", 0.44, 0.48, undefined, "b"],
  ["Maple, black", 0.52, 0.57, undefined, "b"],
  ["Maple, red", 0.49, 0.54, undefined, "b"],
  ["Maple, silver", 0.44, 0.47, undefined, "b"],
  ["Maple, sugar", 0.56, 0.63, 14.7, "b"],
  ["Oak, bur", 0.58, 0.64, undefined, "b"],
  ["Oak, live", 0.8, 0.88, 14.7, "b"],
  ["Oak, post", 0.6, 0.67, 16.2, "b"],
  ["Oak, swamp white", 0.64, 0.72, undefined, "b"],
  ["Oak, white", 0.6, 0.68, 16.3, "b"],
  ["Sassafras", 0.42, 0.46, 10.3, "b"],
  ["Sweetgum", 0.46, 0.52, 15.8, "b"],
  ["Sycamore, American", 0.46, 0.49, 14.1, "b"],
  ["Tanoak", 0.58, undefined, 17.3, "b"],
  ["Tupelo, black", 0.46, 0.5, 14.4, "b"],
  ["Tupelo, water", 0.46, 0.5, 12.5, "b"],
  ["Walnut, black", 0.51, 0.55, 12.8, "b"],
  ["Willow, black", 0.36, 0.39, 13.9, "b"],
  ["Yellow-poplar", 0.4, 0.42, 12.7, "b"],
  ["Baldcypress", 0.42, 0.46, undefined, "b"],
  ["Cedar, Atlantic white", 0.31, 0.32, 8.8, "b"],
  ["Cedar, eastern redcedar", 0.44, 0.47, 7.8, "b"],
  ["Cedar, incense", 0.35, 0.37, 7.7, "b"],
  ["Cedar, northern white", 0.29, 0.31, 7.2, "b"],
  ["Cedar, Port-Orford", 0.39, 0.43, 10.1, "b"],
  ["Cedar, western redcedar", 0.31, 0.32, 6.8, "b"],
  ["Cedar, yellow", 0.42, 0.44, 9.2, "b"],
  ["Douglas-fir, coast", 0.45, 0.48, 12.4, "b"],
  ["Oak, northern red", 0.56, 0.63, 13.7, "a"],
  ["Pine, ponderosa", 0.38, 0.4, undefined, "old"],
  ["Pine, sugar", 0.34, 0.36, undefined, "old"],
  ["Pine, western white", 0.35, 0.38, undefined, "old"],
  ["Pine, red", 0.41, 0.46, undefined, "old"],
  ["Redwood, old-growth", 0.38, 0.4, undefined, "old"],
  ["boxelder", 0.42, 0.46, undefined, "fia"],
  ["yellow buckeye", 0.33, 0.36, 12.5, "fia"],
  ["Ohio buckeye", 0.33, 0.36, undefined, "fia"],
  ["Osage-orange", 0.76, 0.85, undefined, "fia"],
  ["river birch", 0.49, 0.56, 13.5, "fia"],
  ["gray birch", 0.45, 0.51, 14.7, "fia"],
  ["northern catalpa", 0.38, 0.41, undefined, "fia"],
  ["Pacific madrone", 0.58, 0.65, undefined, "fia"],
  ["California laurel", 0.51, 0.55, undefined, "fia"],
  ["common persimmon", 0.64, 0.74, 19.1, "fia"],
  ["eastern hophornbeam", 0.63, 0.7, undefined, "fia"],
  ["American holly", 0.5, 0.57, undefined, "fia"],
  ["flowering dogwood", 0.64, 0.73, undefined, "fia"],
  ["honey mesquite", 0.78, 0.82, undefined, "fia"],
  ["red mulberry", 0.52, 0.58, undefined, "fia"],
  ["black oak", 0.56, 0.61, undefined, "fia"],
  ["southern red oak", 0.52, 0.59, undefined, "fia"],
  ["Oregon white oak", 0.64, 0.72, undefined, "fia"],
  ["winged elm", 0.6, 0.66, 17.7, "fia"],
  ["cedar elm", 0.59, 0.64, 15.4, "fia"],
  ["Pacific yew", 0.6, 0.67, undefined, "fia"],
  ["sourwood", 0.5, 0.55, undefined, "fia"],
  ["eastern white pine", 0.34, 0.35, undefined, "fia"],
];

/** Other names in use for one and the same tabled wood. */
const also: Readonly<Record<string, string>> = {
  "eastern redcedar": "Cedar, eastern redcedar",
  "western redcedar": "Cedar, western redcedar",
  "balsam poplar": "Cottonwood, balsam poplar",
  cucumbertree: "Magnolia, cucumbertree",
  pecan: "Hickory, pecan",
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

/** "Maple, silver" as people say it; a proper name keeps its capital. */
function spoken(name: string): string {
  const [kind, which] = name.split(", ");
  return which
    ? `${which} ${kind.toLowerCase()}`
    : /^(American|California|Ohio|Oregon|Pacific|Douglas|Osage)/.test(kind)
      ? kind
      : kind.toLowerCase();
}
const squash = (name: string) => name.toLowerCase().replace(/[^a-z0-9]/g, "");

const species = rows.map(([name, green, at12, shrinkage, source]): Species & { handbook: string } => ({
  handbook: name,
  name: spoken(name),
  green,
  at12,
  shrinkage: shrinkage === undefined ? undefined : shrinkage / 100,
  source: speciesSources[source],
}));

const known = new Map<string, Species>();
for (const wood of species) for (const name of [wood.handbook, wood.name]) known.set(squash(name), wood);
for (const [name, handbook] of Object.entries(also)) known.set(squash(name), known.get(squash(handbook))!);

export const speciesNames: readonly string[] = species.map(({ name }) => name);

/** The wood a name stands for, in any case, either word order, with or without spaces, hyphens and commas. */
export function findSpecies(name: string): Species {
  const found = known.get(squash(name));
  if (found) return found;
  const near = nearest(name, speciesNames);
  throw near.length
    ? noAnswer`no wood called “${name}” is in the tables: the nearest are ${near.join(", ")}`
    : noAnswer`no wood called “${name}” is in the tables: weigh and measure it with PIECEGRAVITY`;
}

/** Shrinkage to oven-dry where the table has none: S0 = 26.5 Gb % (FPL-GTR-282, eq. 4-12). */
const shrinkageOf = ({ green, shrinkage }: Species): number => shrinkage ?? 0.265 * green;

/** Specific gravity on volume at a moisture below fibre saturation (30 %): Gx = Gb / (1 − Sx), Sx = S0 (1 − x/30) (eqs. 4-9 and 4-11). */
export const gravityAt = (wood: Species, moisture: number): number => wood.green / (1 - shrinkageOf(wood) * (1 - moisture / 0.3));

import { type Dimension, type Kind, kindTable, type System, type UnitRow, unitTable } from "./unittable";

/** One unit: `internal = (typed + shift) × factor`. */
export interface Unit {
  readonly name: string;
  readonly factor: number;
  readonly shift: number;
  readonly dimension: Dimension;
  readonly spellings: readonly string[];
}

/** "1 1/2 In." and "1 1/2 in" are one spelling. */
const squash = (spelling: string) =>
  spelling
    .toLowerCase()
    .replace(/[\s.]|(?<=\w)-(?=\w)/g, "")
    .replace(/[″”]/g, '"')
    .replace(/[′’]/g, "'")
    .replace("º", "°");

const units: Unit[] = Object.entries(unitTable).flatMap(([dimension, rows]) =>
  (rows as readonly UnitRow[]).map(([name, factor, spellings = "", shift = 0]) => ({
    name,
    factor,
    shift,
    dimension: dimension as Dimension,
    spellings: [name, ...spellings.split("|")].filter(Boolean).map(squash),
  })),
);

const spelled = new Map<Dimension, Map<string, Unit>>();
for (const unit of units) {
  const known = spelled.get(unit.dimension) ?? new Map<string, Unit>();
  for (const spelling of unit.spellings) known.set(spelling, unit);
  spelled.set(unit.dimension, known);
}

const named = (dimension: Dimension, name: string) => units.find((u) => u.dimension === dimension && u.name === name)!;

const kinds = Object.fromEntries(
  Object.entries(kindTable).map(([kind, [dimension, us, si]]) => [kind, { dimension, US: named(dimension, us), SI: named(dimension, si) }]),
) as Record<Kind, { dimension: Dimension; US: Unit; SI: Unit }>;

export const dimensionOf = (kind: Kind): Dimension => kinds[kind].dimension;

/** The unit of a plain number, for every kind: what a shop's system and its scale decide. */
export interface Units extends Readonly<Record<Kind, Unit>> {
  readonly system: System;
}

const scales = ["oz", "g", "kg", "lb"] as const;
export type Scale = (typeof scales)[number];
export const scaleNames: readonly Scale[] = scales;

const systems = new Map<string, Units>();

/** The plain units of a system, with weights in what the scale reads where that differs from the system's own. */
export function plainUnits(system: System, scale?: Scale): Units {
  const key = `${system} ${scale ?? ""}`;
  const known = systems.get(key);
  if (known) return known;
  const made = Object.fromEntries(Object.entries(kinds).map(([kind, row]) => [kind, row[system]])) as Record<Kind, Unit>;
  if (scale) made.weight = named("mass", scale);
  const result = { ...made, system };
  systems.set(key, result);
  return result;
}

export const toInternal = (n: number, unit: Unit): number => (n + unit.shift) * unit.factor;
export const fromInternal = (n: number, unit: Unit): number => n / unit.factor - unit.shift;

/** The unit a text names within one dimension, or undefined. */
export const findUnit = (dimension: Dimension, spelling: string): Unit | undefined => spelled.get(dimension)!.get(squash(spelling));

/** The dimensions in which a spelling means something: to say "g is a weight" where a length is due. */
export const dimensionsOf = (spelling: string): Dimension[] => [...spelled.keys()].filter((d) => findUnit(d, spelling));

/** The units a person may type for a dimension, for messages and forms. */
export const unitNames = (dimension: Dimension): string[] => units.filter((u) => u.dimension === dimension && u.name).map((u) => u.name);

/** Lines of one label, the name first. */
export type Label = readonly string[];

/** A blank to write on by hand. */
const open = "________";

export interface Tub {
  readonly color: string;
  readonly mixedOn?: string;
  readonly useBy?: string;
  /** "0.25 tsp per qt" */
  readonly dyeRate?: string;
}

export const tubCare = "Wear gloves and eye protection. Ventilate. Keep it cool, lid loose, away from food and children.";

/** The label of a tub: what it holds, color, mixed on, use by, dye rate, and the caution. */
export const tubLabel = ({ color, mixedOn = open, useBy = open, dyeRate = open }: Tub): Label => [
  `Mixed resin, ${color || "clear"}`,
  `mixed ${mixedOn}, use by ${useBy}`,
  `dye ${dyeRate}`,
  tubCare,
];

/** A row of pieces, each of which gets a label. */
export interface Labeled {
  readonly name: string;
  readonly wood: string;
  readonly count: number;
  /** "20.6 g" */
  readonly dry?: string;
  readonly color?: string;
}

/** The labels of pieces, from the piece with this number on: number or kind, wood, dry weight, color, day. */
export function pieceLabels(rows: readonly Labeled[], from: number, day: string): Label[] {
  const all = rows.flatMap(({ name, wood, count, dry = open, color }) =>
    Array.from(
      { length: count },
      (_, i): Label => [
        count > 1 ? `${name}, ${i + 1} of ${count}` : name,
        wood,
        `oven-dry ${dry}`,
        `${color ? `${color}, ` : ""}${day || open}`,
      ],
    ),
  );
  return all.slice(from - 1);
}

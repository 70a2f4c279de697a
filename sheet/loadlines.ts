/** What the Loads sheet opens on: three kinds of the hundred blanks, and invented prices. */

export interface Kind {
  readonly wood: string;
  readonly thickness: number;
  readonly width: number;
  readonly length: number;
}

/** How many there are is counted on the sheet of blanks; each kind at its commonest size. */
export const kinds: readonly Kind[] = [
  { wood: "boxelder", thickness: 0.75, width: 0.75, length: 5 },
  { wood: "American sycamore", thickness: 0.875, width: 0.875, length: 5.25 },
  { wood: "sweetgum", thickness: 1, width: 1, length: 5.5 },
];

/** Lines of the shopping list that cost something, by their names there. */
export const priced: readonly (readonly [name: string, price: number])[] = [
  ["fluid to mix", 23.4],
  ["packets", 1.75],
  ["dye", 0.9],
  ["foil", 0.08],
  ["oven hours", 0.36],
];

export const spoiled = 2;
export const margin = 0.4;

/** Sizes that the resin is sold in, each with its unit, and their prices. */
export const tubs: readonly (readonly [size: string, price: number])[] = [
  ["1 qt", 27.5],
  ["1/2 gal", 49],
  ["1 gal", 92],
];

/** The stock of an invented shop: a hundred blanks, three of them with the slips that happen at a bench. Inches and grams. */
export interface Blank {
  readonly label: string;
  readonly species: string;
  readonly condition: "sound" | "spalted" | "punky";
  readonly thickness: number;
  readonly width: number;
  readonly length: number;
  /** As the piece lies there, and after the oven took all water out. */
  readonly weight: number;
  readonly dryWeight: number;
}

type Row = readonly [
  species: string,
  condition: Blank["condition"],
  thickness: number,
  width: number,
  length: number,
  weight: number,
  dryWeight: number,
];

/** Number 17 weighs less than when dry, the wood of number 24 is misspelt, and number 63 is too wet. */
// biome-ignore format: a table reads best a piece a line
const rows: readonly Row[] = [
  ["boxelder", "spalted", 0.75, 0.75, 5, 21.2, 20.6],
  ["boxelder", "spalted", 0.75, 0.75, 5, 20, 19.9],
  ["boxelder", "spalted", 0.75, 0.75, 5, 19.7, 19.1],
  ["boxelder", "spalted", 0.75, 0.75, 5, 22.8, 22.2],
  ["boxelder", "spalted", 0.75, 0.75, 5, 20.3, 19.6],
  ["boxelder", "spalted", 0.75, 0.75, 5, 20.3, 20.1],
  ["boxelder", "spalted", 0.75, 0.75, 5, 20.3, 19.1],
  ["boxelder", "spalted", 0.75, 0.8125, 5, 23.7, 22.3],
  ["boxelder", "spalted", 0.75, 0.75, 5, 20.9, 20.1],
  ["boxelder", "spalted", 0.75, 0.75, 5, 21.3, 20.9],
  ["boxelder", "spalted", 0.75, 0.75, 5, 19.9, 19],
  ["boxelder", "spalted", 0.75, 0.75, 5, 22, 21.6],
  ["boxelder", "spalted", 0.75, 0.75, 5, 20.5, 19.7],
  ["boxelder", "spalted", 0.75, 0.75, 5, 19.7, 19.3],
  ["silver maple", "punky", 0.8125, 0.8125, 5, 22, 21.3],
  ["silver maple", "punky", 0.8125, 0.75, 5, 18.4, 17.9],
  ["silver maple", "punky", 0.75, 0.8125, 5, 17.7, 19.1],
  ["silver maple", "punky", 0.75, 0.75, 5, 19.4, 18.9],
  ["silver maple", "punky", 0.8125, 0.75, 5, 21, 20.4],
  ["silver maple", "punky", 0.75, 0.75, 5, 17.6, 17.1],
  ["silver maple", "punky", 0.75, 0.75, 5, 18.4, 18],
  ["silver maple", "punky", 0.75, 0.75, 5, 17.9, 17.5],
  ["silver maple", "punky", 0.75, 0.75, 5, 20.1, 19.8],
  ["silver mapel", "punky", 0.75, 0.75, 5, 19.9, 18.9],
  ["silver maple", "punky", 0.75, 0.8125, 5, 18.4, 17.7],
  ["silver maple", "punky", 0.75, 0.75, 5, 19.5, 18.5],
  ["silver maple", "punky", 0.75, 0.75, 5, 16.9, 16.3],
  ["river birch", "spalted", 0.75, 0.75, 5.25, 26.3, 24.9],
  ["river birch", "spalted", 0.75, 0.8125, 5.25, 27.2, 25.8],
  ["river birch", "spalted", 0.75, 0.8125, 5.25, 26.6, 25.2],
  ["river birch", "spalted", 0.8125, 0.75, 5.25, 25.8, 25.2],
  ["river birch", "spalted", 0.8125, 0.8125, 5.25, 28.3, 27.5],
  ["river birch", "spalted", 0.8125, 0.75, 5.25, 24.7, 24.7],
  ["river birch", "spalted", 0.75, 0.75, 5.25, 26.2, 24.8],
  ["river birch", "spalted", 0.75, 0.75, 5.25, 24.8, 24.1],
  ["river birch", "spalted", 0.75, 0.75, 5.25, 26, 24.9],
  ["river birch", "spalted", 0.75, 0.75, 5.25, 26, 25.7],
  ["American sycamore", "sound", 0.875, 0.875, 5.25, 33.8, 32.9],
  ["American sycamore", "sound", 0.875, 0.875, 5.25, 38.8, 35.7],
  ["American sycamore", "sound", 0.875, 0.875, 5.25, 35.1, 33.9],
  ["American sycamore", "sound", 0.875, 0.875, 5.25, 38.7, 37.6],
  ["American sycamore", "sound", 0.875, 0.875, 5.25, 32.7, 32.5],
  ["American sycamore", "sound", 0.875, 0.875, 5.25, 34.4, 33.3],
  ["American sycamore", "sound", 0.875, 0.875, 5.25, 35.8, 34.1],
  ["American sycamore", "sound", 0.9375, 0.875, 5.25, 37.9, 37.3],
  ["black cherry", "sound", 0.8125, 0.75, 5, 27.3, 25.7],
  ["black cherry", "sound", 0.75, 0.75, 5, 26.9, 25.5],
  ["black cherry", "sound", 0.8125, 0.75, 5, 29.1, 28.3],
  ["black cherry", "sound", 0.75, 0.75, 5, 25.3, 24.5],
  ["black cherry", "sound", 0.75, 0.75, 5, 25.9, 24.8],
  ["black cherry", "sound", 0.75, 0.8125, 5, 27.2, 27.1],
  ["black cherry", "sound", 0.75, 0.75, 5, 26.1, 24.5],
  ["black cherry", "sound", 0.75, 0.75, 5, 25.2, 25.1],
  ["black cherry", "sound", 0.75, 0.75, 5, 25, 24.4],
  ["sugar maple", "spalted", 0.75, 0.8125, 5, 31.3, 30.4],
  ["sugar maple", "spalted", 0.8125, 0.8125, 5, 33.4, 31.7],
  ["sugar maple", "spalted", 0.8125, 0.75, 5, 32.9, 31.5],
  ["sugar maple", "spalted", 0.75, 0.75, 5, 28.1, 27.6],
  ["sugar maple", "spalted", 0.75, 0.75, 5, 28.4, 27.7],
  ["sugar maple", "spalted", 0.75, 0.75, 5, 28.9, 28.6],
  ["sugar maple", "spalted", 0.75, 0.75, 5, 28.2, 27.3],
  ["sugar maple", "spalted", 0.75, 0.75, 5, 24.8, 23.6],
  ["sugar maple", "spalted", 0.8125, 0.75, 5, 41.8, 30.3],
  ["sugar maple", "spalted", 0.75, 0.75, 5, 28.2, 26.8],
  ["sugar maple", "spalted", 0.75, 0.75, 5, 29.3, 28.2],
  ["sugar maple", "spalted", 0.75, 0.75, 5, 29.2, 27.9],
  ["yellow buckeye", "punky", 0.875, 0.875, 5.5, 19.1, 18.2],
  ["yellow buckeye", "punky", 0.875, 0.875, 5.5, 21.5, 21],
  ["yellow buckeye", "punky", 0.875, 0.875, 5.5, 22, 21.6],
  ["yellow buckeye", "punky", 0.875, 0.875, 5.5, 18.5, 18.4],
  ["yellow buckeye", "punky", 0.875, 0.9375, 5.5, 21.8, 21.2],
  ["yellow buckeye", "punky", 0.875, 0.875, 5.5, 21.7, 20.8],
  ["yellow buckeye", "punky", 0.875, 0.9375, 5.5, 19.6, 18.2],
  ["yellow buckeye", "punky", 0.875, 0.875, 5.5, 19.2, 18.6],
  ["yellow buckeye", "punky", 0.875, 0.9375, 5.5, 21.4, 20.6],
  ["hackberry", "spalted", 0.75, 0.75, 5, 25.8, 24.2],
  ["hackberry", "spalted", 0.8125, 0.75, 5, 24.5, 23.4],
  ["hackberry", "spalted", 0.8125, 0.75, 5, 26.8, 25.5],
  ["hackberry", "spalted", 0.8125, 0.75, 5, 27.1, 26],
  ["hackberry", "spalted", 0.75, 0.75, 5, 24.7, 23.9],
  ["hackberry", "spalted", 0.8125, 0.8125, 5, 27.4, 26],
  ["hackberry", "spalted", 0.75, 0.8125, 5, 25.6, 24.7],
  ["hackberry", "spalted", 0.75, 0.75, 5, 23.3, 23],
  ["American beech", "spalted", 0.9375, 0.875, 5.25, 46.8, 44.3],
  ["American beech", "spalted", 0.875, 0.875, 5.25, 42.5, 41.4],
  ["American beech", "spalted", 0.875, 0.875, 5.25, 45.3, 43.5],
  ["American beech", "spalted", 0.875, 0.9375, 5.25, 39.7, 39.6],
  ["American beech", "spalted", 0.875, 0.875, 5.25, 42.3, 40.2],
  ["American beech", "spalted", 0.875, 0.875, 5.25, 39.4, 37.4],
  ["American beech", "spalted", 0.9375, 0.875, 5.25, 40.4, 39],
  ["American beech", "spalted", 0.875, 0.875, 5.25, 40.4, 39.4],
  ["American beech", "spalted", 0.9375, 0.875, 5.25, 40.9, 39.4],
  ["sweetgum", "sound", 1, 1, 5.5, 50.6, 48.6],
  ["sweetgum", "sound", 1, 1, 5.5, 43.8, 43.3],
  ["sweetgum", "sound", 1.0625, 1, 5.5, 52.5, 50.6],
  ["sweetgum", "sound", 1, 1, 5.5, 48.5, 47.4],
  ["sweetgum", "sound", 1, 1, 5.5, 41.9, 40.5],
  ["sweetgum", "sound", 1, 1, 5.5, 45.4, 44.5],
  ["sweetgum", "sound", 1, 1, 5.5, 47.8, 46.5],
  ["sweetgum", "sound", 1, 1, 5.5, 47.6, 47.2],
];

export const blanks: readonly Blank[] = rows.map(([species, condition, thickness, width, length, weight, dryWeight], i) => ({
  label: `P-${String(i + 1).padStart(3, "0")}`,
  species,
  condition,
  thickness,
  width,
  length,
  weight,
  dryWeight,
}));

/** How that shop works: what it put into its settings table, the rest stands as it comes. */
export const shop: Readonly<Record<string, string | number>> = {
  units: "US",
  "scale reads": "g",
  cover: 1,
  fullness: 0.55,
  "dye rate": 0.25,
  "in the oven": "foil",
  altitude: 650,
  tub: 5,
  "tub height": 10,
  tubs: 3,
  "days off": "Sun",
};

/** Inside diameter of its vacuum chamber, inches, and the day it mixed, as a serial: 14 March 2026. */
export const chamber = 12;
export const mixedOn = 46095;

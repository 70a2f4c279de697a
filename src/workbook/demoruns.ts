/** One run; volumes in cubic inches, weights in grams, days before the demo. */
export type DemoRun = readonly [
  days: number,
  wood: string,
  pieces: number,
  volume: number,
  gravity: number,
  before: number,
  full: number,
  lost: number,
  bubbled: number,
  result: string,
];

/** Runs of the invented shop; its resin weighs 1.03 g to the milliliter. */
export const demoRuns: readonly DemoRun[] = [
  [-52, "boxelder", 12, 34.2, 0.44, 247, 0.57, 0.09, 165, "good color, one sticky end, baked again"],
  [-45, "boxelder", 10, 28.1, 0.45, 207, 0.53, 0.08, 180, "even"],
  [-38, "silver maple", 11, 36.3, 0.37, 220, 0.61, 0.11, 140, "deep color"],
  [-31, "sugar maple", 8, 24.4, 0.6, 240, 0.41, 0.07, 210, "pale core"],
  [-24, "sugar maple", 8, 24.2, 0.61, 242, 0.38, 0.06, 240, "pale core again: thinner next time"],
  [-17, "yellow buckeye", 9, 37.9, 0.27, 168, 0.68, 0.12, 130, "heavy, good"],
  [-10, "boxelder", 14, 39.4, 0.45, 290, 0.56, 0.1, 150, "even"],
  [-1, "river birch", 10, 29.5, 0.51, 247, 0.49, 0.08, 190, "good"],
];

import { answers } from "../../../src/run/answers";
import { hour } from "../../../src/run/hours";
import { type Choice, runOf } from "../../../src/run/making";
import type { Piece, Run } from "../../../src/run/schema";

/** Saturday, 14 March 2026, 14:00 UTC. */
export const demo = Date.UTC(2026, 2, 14, 14);

export const piece = (count: number, more: Partial<Piece> = {}): Piece => ({
  name: "spalted boxelder",
  wood: "boxelder",
  count,
  ...{ thickness: 0.75, width: 0.75, length: 5, dry: 20.6 },
  ...more,
});

const choice: Choice = {
  id: "r",
  system: "US",
  shop: [
    ["units", "US"],
    ["scale reads", "g"],
    ["fullness", 0.55],
    ["altitude", 650],
  ],
  chamber: 12,
  height: 12,
  color: "blue",
  together: 1,
  begins: { how: "demo", at: demo },
  offset: 0,
  loads: [{ pieces: [piece(4)] }],
};

export const made = (change: Partial<Choice> = {}): Run => runOf({ ...choice, ...change }, answers);

export const begunNow = (change: Partial<Choice> = {}): Run => made({ begins: { how: "now", at: demo - 4 * hour }, ...change });

export const telling = {
  moment: (at: number) => new Date(at).toISOString().slice(11, 16),
  day: (at: number) => new Date(at).toISOString().slice(0, 10),
  spell: (milliseconds: number) => `${Math.round(milliseconds / 60_000)} min`,
};

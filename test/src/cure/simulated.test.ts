import { bake } from "../../../src/cure/bake";
import { block, secondsTo } from "../../../src/cure/block";
import { filledWood, liquid } from "../../../src/cure/filled";
import { likelyBake } from "../../../src/cure/heating";
import { rangeHolds } from "../../../src/cure/ovenwords";

/**
 * How often a bake's likely range holds, were every input off at once by what is known of it. Spreads are standard deviations
 * of a normal unless it says otherwise; what no source gives is from memory.
 */
const inputs = {
  /** Within a species: Wood Handbook, ch. 5, from memory. */
  gravity: 0.1,
  /** × 0.55 to × 1.45 for nine in ten, from memory. */
  fullness: 0.45 / 1.645,
  /** Anywhere between the bounds, all alike. */
  conductivity: "uniform",
  /** Of eq. 4-17 for dry wood, which is good to 20 % for nine in ten (Wood Handbook, ch. 4). */
  wood: 0.2 / 1.645,
  /** Two thirds to one and a half for nine in ten, its logarithm normal: from memory. */
  surface: Math.log(1.5) / 1.645,
  /** K that the oven is off its dial: 5 °F for nine in ten, from memory. */
  oven: (5 * 5) / 9 / 1.645,
  /** K, the room against its thermometer: from memory. */
  room: (3 * 5) / 9,
  /** Of a side: 1/64 in on 3/4 in. */
  side: 0.02,
  /** Of the liquid resin's density times its heat: from memory. */
  resin: 0.1,
} as const;

/** A small generator of its own (mulberry32), so that every run draws alike. */
function drawer(seed: number): () => number {
  let state = seed;
  return () => {
    state = (state + 0x6d2b79f5) | 0;
    let t = Math.imul(state ^ (state >>> 15), 1 | state);
    t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t;
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  };
}

const draws = 800;
const inch = 0.0254;
const F = (degrees: number) => ((degrees - 32) * 5) / 9;
const shop = { oven: F(200), room: F(70), core: F(190), hold: 0, shortestBake: 0, fullness: 0.6 };

/** Share of the outcomes inside the likely range. */
function outcomes(thickness: number, gravity: number, h: number, seed: number) {
  const uniform = drawer(seed);
  const normal = () => Math.sqrt(-2 * Math.log(1 - uniform())) * Math.cos(2 * Math.PI * uniform());
  const piece = { thickness: thickness * inch, width: thickness * inch, length: 5 * inch, gravity, fullness: shop.fullness };
  const [least, most] = likelyBake(piece, { ...shop, ovenSurfaceCoefficient: h });
  let outside = 0;
  for (let i = 0; i < draws; i++) {
    const G = Math.max(0.2, gravity * (1 + inputs.gravity * normal()));
    const fullness = Math.min(1, Math.max(0.1, shop.fullness * (1 + inputs.fullness * normal())));
    const warmth = { ...liquid, heat: liquid.heat * (1 + inputs.resin * normal()) };
    const filled = filledWood(G, fullness, warmth);
    const k = (filled.least + (filled.most - filled.least) * uniform()) * Math.max(0.5, 1 + inputs.wood * normal());
    const surface = h * Math.exp(inputs.surface * normal());
    const side = 1 + inputs.side * normal();
    const oven = shop.oven + inputs.oven * normal();
    const room = shop.room + inputs.room * normal();
    const sides = { thickness: piece.thickness * side, width: piece.width * side, length: piece.length };
    const seconds =
      shop.core >= oven ? Number.POSITIVE_INFINITY : secondsTo(block(sides, surface, k, filled.heat), (oven - shop.core) / (oven - room));
    if (seconds < least || seconds > most!) outside++;
  }
  return 1 - outside / draws;
}

const cases = [0.75, 1, 1.5].flatMap((thickness) =>
  (
    [
      ["foil", 8],
      ["spaced", 12],
      ["fan", 20],
    ] as const
  ).map(([way, h], i) => ({ thickness, way, h, seed: 1 + i + thickness * 100 })),
);

describe("the likely range of a bake", () => {
  it.each(cases)("holds about 9 outcomes in 10 of a $thickness in blank, $way", ({ thickness, h, seed }) => {
    const inside = outcomes(thickness, 0.4, h, seed);
    expect(inside).toBeGreaterThan(0.85);
    expect(inside).toBeLessThan(0.96);
  });

  it("says so where it is told", () => {
    expect(rangeHolds).toMatch(/^About 9 bakes in 10/);
    expect(bake.accuracy).toContain(rangeHolds);
  });
});

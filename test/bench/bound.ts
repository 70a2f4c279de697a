import type { Section } from "../../src/chamber/section";

/** So many equal pieces; metres. */
export interface Lot {
  readonly sides: readonly [number, number, number];
  readonly count: number;
}

interface Tub {
  readonly section: Section;
  /** Height for pieces. */
  readonly height: number;
  readonly gap: number;
}

const cells = 120;

/*
 * The most that parallel rectangles with no side under `side` cover of the quarter of a disc of radius 1, `off` wider all
 * round for the gap. Their upper right corners that nothing else overtops go down in a stair: of two that follow each other
 * one lies a side farther right or a side lower, for else they would overlap. The greatest stair, on a grid that always
 * rounds in its favor.
 */
function stair(side: number, off: number): number {
  const step = 1 / cells;
  const circle = Float64Array.from({ length: cells + 1 }, (_, x) => Math.sqrt(Math.max(0, 1 - (Math.max(0, x - 1) * step) ** 2)));
  const level = (y: number) => Math.min(cells, Math.max(0, Math.ceil(y / step - 1e-9)));
  const apart = Math.floor(side / step) - 1;
  const best = Array.from({ length: cells + 1 }, () => new Float64Array(cells + 1));
  for (let x = cells - 1; x >= 0; x--)
    for (let y = 0; y <= cells; y++) {
      let most = 0;
      for (let right = x + 1; right <= cells; right++) {
        const wall = level(circle[right]);
        const top = right - x >= apart ? Math.min(y, wall) : Math.min(y - apart, wall);
        if (top < 0) continue;
        most = Math.max(most, (right - x) * step * (top * step + off) + best[right][top]);
      }
      best[x][y] = most;
    }
  // The first corner may lie anywhere; what is left of it reaches over the middle, and the gap beyond the last adds its rim.
  let most = 0;
  for (let right = 0; right <= cells; right++) {
    const top = level(circle[right]);
    most = Math.max(most, (right * step + off) * (top * step + off) + best[right][top]);
  }
  return most;
}

const stairs = new Map<string, number>();

/** The most that parallel pieces cover of the floor, each with half the gap around it. */
function coverable({ section, gap }: Tub, thinnest: number): number {
  if (section.shape === "rectangle") return (section.length - gap) * (section.width - gap);
  const radius = section.diameter / 2 - gap;
  const key = `${radius},${thinnest},${gap}`;
  const known = stairs.get(key) ?? 4 * radius ** 2 * stair((thinnest + gap) / radius, gap / 2 / radius);
  stairs.set(key, known);
  return Math.min(known, Math.PI * (radius + gap * Math.SQRT1_2) ** 2);
}

/** Dual feasible: whatever shares of the height add up to no more than 1, their values do too (Fekete and Schepers, 2001). */
const fitted = (k: number, share: number): number => {
  if (k === 0) return share;
  const times = share * (k + 1);
  return Math.abs(times - Math.round(times)) < 1e-9 ? share : Math.floor(times) / k;
};

/**
 * Loads that no plan in layers of parallel pieces can do without. Each layer's pieces are as high as the layer or lower, so
 * the values of their heights, times the floor they take, add up to no more than what can be covered of the floor.
 */
export function fewestLoads(lots: readonly Lot[], tub: Tub): number {
  const { height, gap, section } = tub;
  const free = section.shape === "round" ? section.diameter - 2 * gap : Math.hypot(section.length, section.width) - 2 * gap;
  const area = coverable(tub, Math.min(...lots.flatMap(({ sides }) => sides)));
  let most = 0;
  for (let k = 0; k <= 20; k++) {
    const need = lots.reduce((sum, { sides: [a, b, c], count }) => {
      const ways = [
        [a, b, c],
        [a, c, b],
        [b, c, a],
      ].filter(([p, q, stands]) => stands <= height * (1 + 1e-9) && Math.hypot(p, q) <= free * (1 + 1e-9));
      return sum + count * Math.min(...ways.map(([p, q, stands]) => (p + gap) * (q + gap) * fitted(k, stands / height)));
    }, 0);
    most = Math.max(most, need / area);
  }
  return most;
}

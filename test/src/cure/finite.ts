/** A second opinion on the series: the same block by explicit finite volumes, an eighth of it, with nodes on its middle planes and faces. */
export interface Case {
  /** Metres, the grain along the last. */
  readonly sides: readonly [number, number, number];
  readonly k: readonly [number, number, number];
  readonly heat: number;
  readonly h: number;
}

const cells = 8;
const nodes = cells + 1;
const at = (i: number, j: number, k: number): number => (i * nodes + j) * nodes + k;

/** Steps until `done` says so; share of the first difference left, at the core and in the middle of the first side's face. */
export function march({ sides, k, heat, h }: Case, done: (seconds: number, core: number, face: number) => boolean): void {
  const dx = sides.map((side) => side / 2 / cells);
  /** How wide a node's own cell is: half at the middle plane and at the face. */
  const wide = (d: number, n: number) => dx[d] * (n === 0 || n === cells ? 0.5 : 1);
  let left = new Float64Array(nodes ** 3).fill(1);
  // Heat per second that a unit difference in direction d moves, over the heat a unit of temperature stores: per side of the node.
  const inward = dx.map((step, d) => (n: number) => (n > 0 ? k[d] / step / (heat * wide(d, n)) : 0));
  const outward = dx.map((step, d) => (n: number) => (n < cells ? k[d] / step : h) / (heat * wide(d, n)));
  const fastest = dx.reduce((sum, _, d) => sum + Math.max(...Array.from({ length: nodes }, (_, n) => inward[d](n) + outward[d](n))), 0);
  const dt = 0.9 / fastest;
  for (let seconds = dt; ; seconds += dt) {
    const next = new Float64Array(left.length);
    for (let a = 0; a < nodes; a++)
      for (let b = 0; b < nodes; b++)
        for (let c = 0; c < nodes; c++) {
          const here = left[at(a, b, c)];
          const flow =
            inward[0](a) * ((a ? left[at(a - 1, b, c)] : here) - here) +
            outward[0](a) * ((a < cells ? left[at(a + 1, b, c)] : 0) - here) +
            inward[1](b) * ((b ? left[at(a, b - 1, c)] : here) - here) +
            outward[1](b) * ((b < cells ? left[at(a, b + 1, c)] : 0) - here) +
            inward[2](c) * ((c ? left[at(a, b, c - 1)] : here) - here) +
            outward[2](c) * ((c < cells ? left[at(a, b, c + 1)] : 0) - here);
          next[at(a, b, c)] = here + dt * flow;
        }
    left = next;
    if (done(seconds, left[0], left[at(cells, 0, 0)])) return;
  }
}

/** Seconds until the core has `target` of the first difference left, between the steps on either side of it. */
export function marchedTo(block: Case, target: number): number {
  let before = { seconds: 0, core: 1 };
  let found = 0;
  march(block, (seconds, core) => {
    if (core <= target) found = before.seconds + ((seconds - before.seconds) * (before.core - target)) / (before.core - core);
    before = { seconds, core };
    return core <= target;
  });
  return found;
}

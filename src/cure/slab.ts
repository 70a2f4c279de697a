/** Transient conduction in a slab that starts at one temperature and is put into air at another: Incropera, 5.5. */
export interface Slab {
  /** α/L², 1/s: the Fourier number that a second adds. */
  readonly pace: number;
  readonly biot: number;
  /** Terms of the series, worked out as they are asked for. */
  readonly terms: Term[];
}

interface Term {
  readonly zeta: number;
  readonly c: number;
}

/** Half thickness L (m), surface coefficient h (W/m²K), conductivity k (W/mK), volumetric heat ρc (J/m³K). */
export const slab = (half: number, h: number, k: number, heat: number): Slab => ({
  pace: k / heat / half ** 2,
  biot: (h * half) / k,
  terms: [],
});

/**
 * ζ tan ζ = Bi between nπ and nπ + π/2. Written as ζ − nπ = arctan(Bi/ζ), left less right rises and is concave:
 * whatever the first guess, Newton's second is below the root, and climbs to it.
 */
function root(n: number, biot: number): number {
  const from = n * Math.PI;
  let zeta = from || Math.sqrt(biot / (1 + biot * (2 / Math.PI) ** 2));
  for (let i = 0; i < 50; i++) {
    const off = zeta - from - Math.atan(biot / zeta);
    const step = off / (1 + biot / (zeta ** 2 + biot ** 2));
    zeta -= step;
    if (Math.abs(step) < 1e-15 * zeta) break;
  }
  return zeta;
}

/** The term after the first n: C = 4 sin ζ / (2ζ + sin 2ζ). */
export function term(slab: Slab, n: number): Term {
  const known = slab.terms[n];
  if (known) return known;
  const zeta = root(n, slab.biot);
  const made = { zeta, c: (4 * Math.sin(zeta)) / (2 * zeta + Math.sin(2 * zeta)) };
  slab.terms[n] = made;
  return made;
}

/** Before this Fourier number no heat has come to the middle that sixteen digits could show: 2 erfc(1/(2√Fo)) < 1e-22. */
const untouched = 0.005;
/** Enough for the surface from Fo = 4e-6 on, and for the middle long before it warms. */
const mostTerms = 1000;

/** Share of the first temperature difference left at x/L from the middle (0, or 1 for the surface), and how fast it falls, 1/s. */
export function remaining(slab: Slab, seconds: number, at: 0 | 1 = 0): { share: number; fall: number } {
  const fourier = slab.pace * seconds;
  if (fourier <= 0 || (at === 0 && fourier < untouched)) return { share: 1, fall: 0 };
  let share = 0;
  let fall = 0;
  for (let n = 0; n < mostTerms; n++) {
    const { zeta, c } = term(slab, n);
    const rate = zeta ** 2;
    const size = c * (at ? Math.cos(zeta) : 1) * Math.exp(-rate * fourier);
    share += size;
    fall += rate * size;
    if (Math.abs(size) < 1e-16 * share) break;
  }
  return { share: Math.min(1, share), fall: fall * slab.pace };
}

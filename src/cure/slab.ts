/** Transient conduction in a slab that starts at one temperature in a bath at another: Incropera, 5.5. */

export interface Slab {
  /** α/L², 1/s: Fourier number per second. */
  readonly pace: number;
  readonly biot: number;
  readonly terms: { readonly zeta: number; readonly c: number }[];
}

/** ζ tan ζ = Bi in its nth interval, (n − 1)π to (n − ½)π. */
function root(n: number, biot: number): number {
  let low = (n - 1) * Math.PI;
  let high = low + Math.PI / 2;
  let zeta = low + Math.atan(biot / (low || Math.sqrt(biot)));
  if (zeta >= high) zeta = (low + high) / 2;
  for (let i = 0; i < 100; i++) {
    const off = zeta * Math.sin(zeta) - biot * Math.cos(zeta);
    const rising = Math.cos(low) > 0;
    if (off > 0 === rising) high = zeta;
    else low = zeta;
    const slope = (1 + biot) * Math.sin(zeta) + zeta * Math.cos(zeta);
    const newton = zeta - off / slope;
    const next = newton > low && newton < high ? newton : (low + high) / 2;
    if (Math.abs(next - zeta) < 1e-15 * (1 + next)) return next;
    zeta = next;
  }
  return zeta;
}

/** Half thickness L (m), surface coefficient h (W/m²K), conductivity k (W/mK), volumetric heat ρc (J/m³K). */
export const slab = (half: number, h: number, k: number, heat: number): Slab => ({
  pace: k / heat / half ** 2,
  biot: (h * half) / k,
  terms: [],
});

const most = 400;

/** Share of the first temperature difference left after some seconds, at x/L from the middle. */
export function remaining(slab: Slab, seconds: number, at = 0): number {
  const fourier = slab.pace * seconds;
  if (fourier <= 0) return 1;
  let sum = 0;
  for (let n = 0; n < most; n++) {
    slab.terms[n] ??= term(n + 1, slab.biot);
    const { zeta, c } = slab.terms[n];
    const size = c * Math.exp(-(zeta ** 2) * fourier);
    sum += size * Math.cos(zeta * at);
    if (Math.abs(size) < 1e-14) return Math.min(1, sum);
  }
  // So early that the series has not settled: the heat has not come this far, but at the surface it has.
  return Math.min(1, Math.max(0, sum));
}

function term(n: number, biot: number) {
  const zeta = root(n, biot);
  return { zeta, c: (4 * Math.sin(zeta)) / (2 * zeta + Math.sin(2 * zeta)) };
}

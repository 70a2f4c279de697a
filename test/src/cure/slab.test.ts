import fc from "fast-check";
import { remaining, slab, term } from "../../../src/cure/slab";
import published from "../../published/thermal.json";
import { near, within } from "../../within";

const rows = (quantity: string) => published.filter((row) => row.quantity === quantity) as any[];
/** A slab whose seconds are Fourier numbers. */
const ofBiot = (biot: number) => slab(1, biot, 1, 1);

describe("the slab series", () => {
  it.each(rows("slab_one_term_root_and_coefficient"))("first root and coefficient at Bi $inputs.Bi ($source)", (row) => {
    const { zeta, c } = term(ofBiot(row.inputs.Bi), 0);
    within(zeta, row.expected.zeta1, row.tolerance);
    within(c, row.expected.C1, row.tolerance);
  });

  it.each(rows("center_temperature_slab"))("middle at Fo $inputs.Fo, Bi $inputs.Bi ($source)", (row) =>
    within(remaining(ofBiot(row.inputs.Bi), row.inputs.Fo).share, row.expected, row.tolerance),
  );

  it.each(rows("center_temperature_square_bar"))("square bar at Fo $inputs.Fo, Bi $inputs.Bi ($source)", (row) =>
    within(remaining(ofBiot(row.inputs.Bi), row.inputs.Fo).share ** 2, row.expected, row.tolerance),
  );

  it("has every root where ζ tan ζ = Bi says, from Bi 1e-6 to 1e6", () =>
    fc.assert(
      fc.property(fc.double({ min: -6, max: 6, noNaN: true }), fc.integer({ min: 0, max: 60 }), (power, n) => {
        const biot = 10 ** power;
        const { zeta } = term(ofBiot(biot), n);
        expect(zeta).toBeGreaterThan(n * Math.PI);
        expect(zeta).toBeLessThan((n + 0.5) * Math.PI);
        within(zeta * Math.sin(zeta) - biot * Math.cos(zeta), 0, 1e-11 * (1 + biot + zeta));
      }),
    ));

  it("is whole before the heat comes, and the surface follows the half-space: exp(Bi²Fo) erfc(Bi√Fo), about 1 − 2 Bi √(Fo/π)", () => {
    expect(remaining(ofBiot(1e4), 0.004).share).toBe(1);
    within(remaining(ofBiot(0.5), 1e-4, 1).share, 1 - 2 * 0.5 * Math.sqrt(1e-4 / Math.PI) + 0.25e-4, 1e-6);
    expect(remaining(ofBiot(3), 0, 1).share).toBe(1);
  });

  it("loses heat as one lump when Bi is tiny: exp(−Bi Fo)", () => near(remaining(ofBiot(1e-5), 5e4).share, Math.exp(-0.5), 1e-5));

  it("tells how fast it falls", () => {
    const s = ofBiot(2);
    const [before, after] = [remaining(s, 0.4 - 1e-5).share, remaining(s, 0.4 + 1e-5).share];
    near(remaining(s, 0.4).fall, (before - after) / 2e-5, 1e-6);
  });
});

import * as fc from "fast-check";
import { amount, decimal, inCents, wholes } from "../../shared/money";
import { Trouble } from "../../shared/outcome";

describe("money", () => {
  it.each([
    { typed: 1.005, is: 1.01 },
    { typed: -1.005, is: -1.01 },
    { typed: 2.675, is: 2.68 },
    { typed: 1.0049999, is: 1 },
    { typed: 0.125, is: 0.13 },
    { typed: -0.004, is: 0 },
    { typed: 1e-7, is: 0 },
    { typed: 1e12, is: 1e12 },
  ])("$typed is $is to the cent, as it was typed and not as binary has it", ({ typed, is }) =>
    expect(amount(inCents(decimal(typed))) + 0).toBe(is),
  );

  it("refuses an amount whose cents a number cannot tell", () => {
    expect(() => amount(decimal(7.04e13))).toThrow(expect.any(Trouble));
    expect(amount(decimal(7e13).plus("0.01"))).toBe(70000000000000.01);
  });

  it("turns decimals into whole multiples of one power of ten and loses no digit, from the tiniest to the largest", () => {
    expect(wholes([decimal(1.5), decimal(0.25), decimal(3)])).toEqual([150n, 25n, 300n]);
    expect(wholes([decimal(1e12), decimal(5e-324)])).toEqual([10n ** 336n, 5n]);
    fc.assert(
      fc.property(fc.double({ noNaN: true, noDefaultInfinity: true }), fc.double({ min: 1e-9, max: 1e9, noNaN: true }), (a, b) => {
        const [wa, wb] = wholes([decimal(a), decimal(b)]);
        expect(decimal(a).div(decimal(b)).minus(decimal(1).times(wa.toString()).div(wb.toString())).abs().toNumber()).toBeLessThanOrEqual(
          Math.abs(a / b) * 1e-50,
        );
      }),
    );
  });
});

import * as fc from "fast-check";
import { type ask, fault, spill } from "../../ask";

const row = (...typed: Parameters<typeof ask> extends [string, ...infer T] ? T : never) => spill("MIX", ...typed)[0] as number[];

describe("MIX", () => {
  it.each([
    { typed: [2.3, 0.5], is: [2, 2, 0.2], from: "by hand" },
    { typed: [3, 1], is: [2, 2, 0], from: "by hand: exactly two packets" },
    { typed: [3, 5], is: [0, 0, 2], from: "more on hand than needed" },
    { typed: [0.1, 0], is: [1, 1, 0.9], from: "by hand" },
    { typed: [0, 0], is: [0, 0, 0], from: "nothing needed" },
  ])("$typed is $is ($from)", ({ typed, is }) => {
    const answer = row(...typed);
    is.forEach((value, i) => {
      expect(answer[i]).toBeCloseTo(value, 12);
    });
  });

  it("takes what is on hand, and what a packet makes, from the shop", () => {
    const shop = [
      ["resin on hand", 0.5],
      ["packet makes", "1 pt"],
    ];
    const [mixed, packets, left] = row(2.3, undefined, shop);
    expect([mixed, packets]).toEqual([2, 4]);
    expect(left).toBeCloseTo(0.2, 12);
    expect(row(2.3, 0, shop)[1]).toBe(5);
    expect(row(2.3)[1]).toBe(3);
  });

  it("mixes no packet for the last digit of a sum", () => {
    expect(row(0.1 + 0.2, 0, [["packet makes", 0.3]])[1]).toBe(1);
    expect(row(3 * (1 + 1e-10), 1)[1]).toBe(2);
    expect(row(100, 100 * (1 - 1e-10))[1]).toBe(0);
    expect(row(3.00001, 1)[1]).toBe(3);
  });

  const resin = (max: number) => fc.double({ min: 0, max, noNaN: true });
  it("keeps the books: on hand and mixed are need and left over, whole packets, and one fewer would not do", () =>
    fc.assert(
      fc.property(resin(1000), resin(100), fc.double({ min: 0.01, max: 20, noNaN: true }), (need, onHand, makes) => {
        const [mixed, packets, left] = row(need, onHand, [["packet makes", makes]]);
        expect(Math.abs(onHand + mixed - need - left)).toBeLessThanOrEqual(1e-9 * Math.max(1, need) * (1 + 1e-6));
        expect(Number.isInteger(packets)).toBe(true);
        expect(Math.abs(packets * makes - mixed)).toBeLessThanOrEqual(1e-9 * mixed);
        expect(left).toBeGreaterThanOrEqual(0);
        // The test's own sums round in their sixteenth digit.
        if (packets > 0) expect(onHand + mixed - makes).toBeLessThanOrEqual(need + 1e-15 * (onHand + mixed));
      }),
    ));

  it.each([
    [["two"], "resin needed: “two” is not a volume: type a value such as 2.3 qt"],
    [[-1], "resin needed must be from 0 qt to 1000000 qt: -1 qt is outside"],
    [[2, -1], "mixed resin left from last time must be from 0 qt to 100 qt: -1 qt is outside"],
    [[2, 101], "mixed resin left from last time must be from 0 qt to 100 qt: 101 qt is outside"],
  ])("refuses %j in words", (typed, message) => expect(fault("MIX", ...typed)).toEqual({ error: "#VALUE!", message }));
});

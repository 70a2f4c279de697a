import fc from "fast-check";
import { ask, fault } from "../../ask";

const grams = [["scale reads", "g"]];
const again = { error: "#N/A", message: "weigh again in 2 hours" };

describe("ISDRY, a change of at most 0.1 % in 2 h (EN 13183-1, wording read in a public guide)", () => {
  it.each([
    { weights: [520, 501, 500.4], is: false, why: "0.12 %" },
    { weights: [520, 500.5, 500], is: true, why: "0.1 % exactly" },
    { weights: [520, 500.6, 500], is: false, why: "0.12 % of the dry weight" },
    { weights: [500, 500.3], is: true, why: "a breath of moisture taken up" },
    { weights: [500, 505], is: false, why: "gaining weight is not constant weight" },
    { weights: [520, "", 500.2, "", 500, ""], is: true, why: "places not filled in" },
    { weights: ["0.5003 kg", "500 g"], is: true, why: "units mixed" },
  ])("$weights is $is: $why", ({ weights, is }) => expect(ask("ISDRY", weights, undefined, grams)).toBe(is));

  it.each([
    { weights: [500, 499.6], hours: [0, 2], is: true, why: "two hours apart" },
    { weights: [510, 499.8, 499.6], hours: [0, 1.5, 2.5], is: false, why: "the weighing 1 h ago is too fresh to compare with" },
    { weights: [510, 500, 499.9, 499.8], hours: [0, 4, 5, 6.5], is: true, why: "compared with 2.5 h before" },
    { weights: [510, "", 500, 499.9], hours: [0, 2, 4, 6], is: true, why: "a weighing left out" },
    { weights: [510, 500, 499.9, ""], hours: [0, 2, 4, 6], is: true, why: "the next weighing planned" },
    { weights: [500, 499.9], hours: ["", ""], is: true, why: "hours not filled in count as none" },
    { weights: [500, 499.9], hours: ["60 min", "3 h"], is: true, why: "hours with units" },
  ])("$weights at $hours is $is: $why", ({ weights, hours, is }) => expect(ask("ISDRY", weights, hours, grams)).toBe(is));

  it("asks for a second weighing, and for one late enough", () => {
    expect(fault("ISDRY", 500)).toEqual(again);
    expect(fault("ISDRY", [500, "", ""])).toEqual(again);
    expect(fault("ISDRY", [500, 0, 0])).toEqual(again);
    expect(fault("ISDRY", [500, 499.9], [0, 1.9], grams)).toEqual(again);
    expect(ask("ISDRY", ["", ""])).toBe("");
    expect(fault("ISDRY", [500.2, 500.1, 499.9], [0, 1, 1.5], grams)).toEqual(again);
  });

  it("knows before the two hours are over that wood is not dry: what it lost is too much already", () => {
    expect(ask("ISDRY", [505, 500], [0, 0.5], grams)).toBe(false);
    expect(ask("ISDRY", [501, 500.5, 500], [0, 0.5, 1], grams)).toBe(false);
    expect(fault("ISDRY", [500, 505], [0, 1], grams)).toEqual(again);
  });

  it("says when the scale is too coarse to tell: its step may be 0.1 % of the weight", () => {
    const cannot = { error: "#N/A", message: "the scale is too coarse for this: weigh several pieces together" };
    expect(fault("ISDRY", [99.9, 99.9], undefined, grams)).toEqual(cannot);
    expect(ask("ISDRY", [100, 100], undefined, grams)).toBe(true);
    expect(fault("ISDRY", [500, 500], undefined, [...grams, ["scale step", 1]])).toEqual(cannot);
    expect(ask("ISDRY", [20, 20], undefined, [...grams, ["scale step", "0.02 g"]])).toBe(true);
  });

  it.each([
    { weights: [500, 499], hours: [0], message: "hours has 1 cells and weights has 2: give each weighing its hours, or leave hours out" },
    { weights: [500, 499], hours: [2, 2], message: "hours, cell 2: each weighing must be later than the one before it" },
    { weights: [500, 499], hours: [0, ""], message: "hours, cell 2: the time of this weighing is missing: type the hours since the first" },
    { weights: [500, "abc"], hours: undefined, message: "cell 2: weighing: “abc” is not a weight: type a value such as 2637 g" },
    { weights: [500, -1], hours: undefined, message: "cell 2: weighing must be from 0 g to 28349500 g: -1 g is outside" },
  ])("$message", ({ weights, hours, message }) => expect(fault("ISDRY", weights, hours, grams)).toEqual({ error: "#VALUE!", message }));

  it("knows wood that dries toward a weight: never dry while the next two hours would still take over 0.1 %", () =>
    fc.assert(
      fc.property(fc.double({ min: 0.5, max: 20, noNaN: true }), fc.integer({ min: 2, max: 40 }), (halfLife, n) => {
        const at = (hours: number) => 500 + 200 * 2 ** (-hours / halfLife);
        const weights = Array.from({ length: n }, (_, i) => at(2 * i));
        const last = weights[n - 1];
        const loss = (weights[n - 2] - last) / last;
        if (Math.abs(loss - 0.001) < 1e-8) return;
        expect(ask("ISDRY", weights, undefined, grams)).toBe(loss < 0.001);
      }),
    ));
});

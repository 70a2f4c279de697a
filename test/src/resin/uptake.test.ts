import * as fc from "fast-check";
import { ask, fault, spill } from "../../ask";
import published from "../../published/resin.json";
import { near, within } from "../../within";

const voids = published.filter(({ quantity }) => quantity === "void share");

describe("UPTAKE", () => {
  it.each(voids)("a litre of wood of gravity $gravity, quite full, takes $expected L ($source)", ({ gravity, expected, off }) =>
    within(ask("UPTAKE", 1000, gravity, 1, 0, "SI"), expected as number, off!),
  );

  it("takes fullness from the shop, and an argument over it", () => {
    near(ask("UPTAKE", 104, 0.45, "", "", [["fullness", 0.4]]), (ask("UPTAKE", 104, 0.45, 1) as number) * 0.4);
    near(ask("UPTAKE", 104, 0.45, 0.5, "", [["fullness", 0.4]]), (ask("UPTAKE", 104, 0.45, 1) as number) * 0.5);
  });

  it("leaves less room to wetter and to denser wood", () =>
    fc.assert(
      fc.property(
        fc.double({ min: 0.1, max: 0.9, noNaN: true }),
        fc.double({ min: 0, max: 0.25, noNaN: true }),
        fc.double({ min: 0.001, max: 0.05, noNaN: true }),
        (gravity, moisture, more) => {
          const taken = ask("UPTAKE", 100, gravity, 0.6, moisture) as number;
          expect(ask("UPTAKE", 100, gravity + more, 0.6, moisture)).toBeLessThan(taken);
          expect(ask("UPTAKE", 100, gravity, 0.6, moisture + more)).toBeLessThan(taken);
        },
      ),
    ));

  it("takes wood at 30 % and none above", () => {
    expect(typeof ask("UPTAKE", 100, 0.45, 0.6, 0.3)).toBe("number");
    expect(fault("UPTAKE", 100, 0.45, 0.6, 0.301)).toEqual({ error: "#N/A", message: "too wet to take resin: dry it first" });
  });

  it("has no answer for wood without voids", () =>
    expect(fault("UPTAKE", 100, 1.5, 0.6, 0.2)).toEqual({
      error: "#N/A",
      message: "no empty space is left at this gravity and moisture: the wood takes nothing",
    }));

  it("answers each row of a column", () =>
    expect(spill("UPTAKE", [100, 100, "", 100], [0.45, "oak", "", 0.45], "", ["", "", "", 0.5]).map(([a]) => typeof a)).toEqual([
      "number",
      "object",
      "string",
      "object",
    ]));
});

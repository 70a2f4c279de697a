import fc from "fast-check";
import { ask, fault, spill } from "../../ask";
import published from "../../published/permeability.json";

const grades = ["unsuited", "poor", "fair", "good"];
const judged = (...typed: Parameters<typeof spill> extends [string, ...infer T] ? T : never) => spill("SUITABILITY", ...typed)[0];

/** Common practice, no source: dense woods take little, decay opens the structure, the center of a large piece stays weak and pale. */
describe("SUITABILITY", () => {
  it.each([
    { typed: [0.45, 0.75], gives: ["good", "70.78 % voids: good"] },
    { typed: [0.7, 0.75], gives: ["fair", "54.55 % voids: fair"] },
    { typed: [0.9, 0.75], gives: ["poor", "41.56 % voids: poor"] },
    { typed: [1.2, 0.75], gives: ["unsuited", "22.08 % voids: unsuited"] },
    {
      typed: [0.45, 3],
      gives: ["fair", "70.78 % voids: good; half thickness is over the reach, the center stays weak and pale: one grade lower"],
    },
    { typed: [0.45, 2], gives: ["good", "70.78 % voids: good"] },
    { typed: [0.7, 0.75, 0, "spalted"], gives: ["good", "54.55 % voids: fair; spalted, decay opens the structure: one grade higher"] },
    {
      typed: [0.7, 3, 0, "punky"],
      gives: [
        "fair",
        "54.55 % voids: fair; half thickness is over the reach, the center stays weak and pale: one grade lower; punky, decay opens the structure: one grade higher",
      ],
    },
    { typed: [0.45, 0.75, 0.05], gives: ["good", "69.14 % voids: good"] },
    { typed: [0.45, 0.75, 0.15], gives: ["dry first", "15 % moisture is over 10 %: water keeps resin out"] },
    { typed: [0.45, 0.75, 0.1], gives: ["good", "67.57 % voids: good"] },
    { typed: ["0.45", "19 mm", "5 %", "Sound"], gives: ["good", "69.14 % voids: good"] },
    { typed: ["silver maple", 0.75], gives: ["good", "68.03 % voids: good"] },
    {
      typed: ["white oak", 0.75],
      gives: ["poor", "53.45 % voids: fair; heartwood of white oak is very difficult to treat: at best poor"],
    },
    {
      typed: ["Douglas fir", 0.75, 0, "spalted"],
      gives: [
        "fair",
        "66.64 % voids: good; spalted, decay opens the structure: one grade higher; heartwood of coast Douglas-fir is difficult to treat: at best fair",
      ],
    },
    {
      typed: ["black locust", 0.75, 0, "punky"],
      gives: ["good", "52.27 % voids: fair; punky, decay opens the structure: one grade higher"],
    },
  ])("$typed is $gives.0", ({ typed, gives }) => expect(judged(...(typed as any))).toEqual(gives));

  it.each(published)("$inputs.species: $expected ($source)", ({ inputs, expected }) => {
    for (const name of inputs.species) {
      const [, reason] = judged(name, 0.75);
      expect([name, /heartwood/.test(String(reason))]).toEqual([name, expected === "hard to treat"]);
    }
  });

  it("takes the thickness in the shop's units and goes by the shop's thresholds", () => {
    expect(judged(0.45, 80, undefined, undefined, "SI")[1]).toBe(
      "70.78 % voids: good; half thickness is over the reach, the center stays weak and pale: one grade lower",
    );
    expect(
      judged(0.45, 3, 0.12, undefined, [
        ["good voids", 0.7],
        ["dry enough", "12 %"],
        ["reach", 2],
      ]),
    ).toEqual(["fair", "66.96 % voids: fair"]);
  });

  it("never grades denser wood of the same kind better", () => {
    const gravity = fc.double({ min: 0.05, max: 1.54, noNaN: true });
    const condition = fc.constantFrom("sound", "spalted", "punky");
    fc.assert(
      fc.property(gravity, gravity, fc.double({ min: 0.1, max: 10, noNaN: true }), condition, (a, b, thickness, how) => {
        const [light, dense] = [Math.min(a, b), Math.max(a, b)].map((g) =>
          grades.indexOf(ask("SUITABILITY", g, thickness, 0, how) as string),
        );
        expect(light).toBeGreaterThanOrEqual(dense);
      }),
    );
  });

  it("answers a column row by row, each fault in both its cells", () => {
    const unknown = {
      error: "#N/A",
      message: "no wood called “silver mapel” is in the tables: the nearest are silver maple, sugar maple, bigleaf maple",
    };
    expect(spill("SUITABILITY", ["silver maple", "", "silver mapel", 0.45], [0.75, "", 0.75, 0.75])).toEqual([
      ["good", "68.03 % voids: good"],
      ["", ""],
      [unknown, unknown],
      ["good", "70.78 % voids: good"],
    ]);
  });

  it.each([
    { typed: [45, 0.75], message: "oven-dry specific gravity must be from 0.05 to 1.54: 45 is outside" },
    { typed: [0.45, 0.75, 0, "rotten"], message: "condition: “rotten” is not one of sound, spalted, punky" },
    {
      typed: [null, 0.75],
      message: "wood: species or specific gravity is missing: type a species such as silver maple, or a specific gravity such as 0.45",
    },
    { typed: [0.45, 0.75, 12], message: "moisture, oven-dry basis: 12 means 1200 %: type 12 % or 0.12" },
  ])("$message", ({ typed, message }) => expect(fault("SUITABILITY", ...(typed as any))).toEqual({ error: "#VALUE!", message }));
});

import { formulaOf } from "../../shared/formula";

describe("a formula as typed", () => {
  it.each([
    { typed: [6, 5, 104], out: "=PORE.FILL(6,5,104)" },
    { typed: [6, undefined, true], out: "=PORE.FILL(6,,TRUE)" },
    { typed: ['3/4"', "silver maple"], out: '=PORE.FILL("3/4""","silver maple")' },
    {
      typed: [
        [1, 2],
        [
          ["a", 1],
          ["b", undefined],
        ],
      ],
      out: '=PORE.FILL({1;2},{"a",1;"b",""})',
    },
    { typed: [], out: "=PORE.FILL()" },
  ])("$out", ({ typed, out }) => expect(formulaOf("PORE.FILL", typed)).toBe(out));
});

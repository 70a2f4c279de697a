import { ask, fault } from "../../ask";
import { near, within } from "../../within";

describe("FILL", () => {
  it.each([
    { typed: [6, 5, 104], is: (54 * Math.PI - 104) / 57.75, from: "9π × 6 in³ less the solids, 57.75 in³ to the quart" },
    { typed: [6, 5, 104, 0.77], is: (54 * Math.PI - 104) / 57.75 + 0.77, from: "and what the wood takes up" },
    { typed: ["8 x 5 in", 5, 104], is: (240 - 104) / 57.75, from: "a tray of 40 in²" },
    { typed: [[[8, 5]], 5, 104], is: (240 - 104) / 57.75, from: "the same in two cells" },
    { typed: [6, 5, 104, "", [["cover", 0]]], is: (45 * Math.PI - 104) / 57.75, from: "no cover" },
    { typed: [6, 5, 54 * Math.PI], is: 0, from: "solids that fill all of it" },
  ])("of $typed is $is qt ($from)", ({ typed, is }) => within(ask("FILL", ...(typed as Parameters<typeof ask>[1][])), is, 1e-9));

  it("agrees under US and SI", () => {
    near(ask("FILL", 152.4, 127, 104 * 16.387064, 0.77 * 0.946352946, "SI"), (ask("FILL", 6, 5, 104, 0.77) as number) * 0.946352946);
  });

  it.each([
    { typed: [6, 5, 200], message: "solids of 200 in³ do not fit: up to the cover the chamber holds 169.6 in³" },
    { typed: [152.4, 127, 3000, "", "SI"], message: "solids of 3000 cm³ do not fit: up to the cover the chamber holds 2780 cm³" },
    { typed: [0.05, 5, 104], message: "inside diameter of the chamber must be from 0.1 in to 200 in: 0.05 in is outside" },
    {
      typed: ["8 x wide", 5, 104],
      message: "inside diameter of the chamber: “x wide” in “8 x wide” is not a known unit: type m, mm, cm, in, ft",
    },
    { typed: [6, "", 104], message: "height of the stack of pieces is missing: type a value such as 5 in" },
    { typed: [6, 5, -1], message: "volume of pieces and submerged ballast must be from 0 in³ to 1000000 in³: -1 in³ is outside" },
  ])("says “$message”", ({ typed, message }) => {
    expect(fault("FILL", ...(typed as Parameters<typeof fault>[1][]))).toEqual({ error: "#VALUE!", message });
  });
});

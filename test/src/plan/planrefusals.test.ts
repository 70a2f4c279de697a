import type { Fault } from "../../../shared/outcome";
import { fault, spill } from "../../ask";
import { linesOf } from "./cases";

describe("PLAN and what cannot be planned", () => {
  it("passes over a heading, empty rows and counts of 0", () => {
    const rows = [
      ["what", "how many", "thick", "wide", "long", "wood"],
      ["", "", "", "", "", ""],
      ["a", 5, 1, 1, 4, 0.5],
      ["none", 0, "?", "?", "?", "?"],
      ["b", 5, 1, 1, 4, 0.5],
    ];
    expect(linesOf(spill("PLAN", rows, 6, 10)).map((line) => [line.pieces, line.count])).toEqual([["5 a, 5 b", 10]]);
  });

  it("names each faulty row after the loads and plans the rest", () => {
    const rows = [
      ["no count", "", 1, 1, 4, 0.5],
      ["fewer than none", -1, 1, 1, 4, 0.5],
      ["half a piece", 2.5, 1, 1, 4, 0.5],
      ["good", 5, 1, 1, 4, 0.5],
      ["elfwood", 5, 1, 1, 4, "elfwood"],
      ["no wood", 5, 1, 1, 4, ""],
      ["too long", 5, 1, 1, 30, 0.5],
      ["too large to bake", 5, 0.5, 5, 12.5, 0.5],
      ["too thick", 5, 2.5, 2.5, 2.5, 0.5],
      ["", 5, "wide", 1, 4, 0.5],
      ["two in one", "5 pcs", 1, 1, 4, 0.5],
    ];
    const lines = linesOf(spill("PLAN", rows, 12, 20));
    expect(lines[0]).toMatchObject({ load: 1, pieces: "5 good", count: 5 });
    expect(lines.slice(1).map((line) => line.load)).toEqual([
      ...[
        "no count",
        "fewer than none",
        "half a piece",
        "elfwood",
        "no wood",
        "too long",
        "too large to bake",
        "too thick",
        "row 10",
        "two in one",
      ],
    ]);
    for (const line of lines.slice(1)) {
      const [, ...cells] = Object.values(line);
      expect(cells).toEqual(Array(16).fill({ error: expect.stringMatching(/^#(VALUE!|N\/A)$/), message: expect.any(String) }));
    }
    const said = lines.slice(1).map((line) => (line.pieces as Fault).message);
    expect(said[0]).toBe("count is missing: type a value such as 12");
    expect(said[1]).toBe("count must be from 0 to 1000000: -1 is outside");
    expect(said[2]).toBe("count must be a whole number: 2.5 is not");
    expect(said[3]).toContain("elfwood");
    expect(said[4]).toContain("missing");
    expect(said[5]).toContain("too large for an oven shelf");
    expect(said[6]).toContain("too large for an oven shelf");
    expect(said[7]).toContain("follow the maker's schedule");
    expect(said[8]).toContain("“wide” is not a length");
    expect(said[9]).toContain("5 pcs");
  });

  it("says which side is too much for the chamber", () => {
    const [line] = linesOf(spill("PLAN", [["a", 5, 1, 4, 8, 0.5]], 4, 8));
    expect((line.count as Fault).error).toBe("#N/A");
    expect((line.count as Fault).message).toMatch(/too (wide|long|thick)/);
  });

  it("gives the header alone, or header and errors, where nothing can be planned", () => {
    expect(spill("PLAN", [["", "", "", "", "", ""]], 6, 10)).toHaveLength(1);
    expect(linesOf(spill("PLAN", [["a", 1, 9, 9, 9, 0.5]], 6, 10))).toHaveLength(1);
  });

  it("refuses what nobody could carry out", () => {
    expect(
      fault(
        "PLAN",
        [
          ["a", 1e6, 1, 1, 4, 0.5],
          ["b", 1e6, 1, 1, 4, 0.5],
        ],
        6,
        10,
      ).message,
    ).toBe("2000000 pieces are more than a plan can hold, 1000000: plan fewer at a time");
    expect(fault("PLAN", [["a", 1e6, 1.5, 1.5, 4, 0.5]], 4, 8).message).toContain("loads are more than a plan can hold, 100000");
    expect(fault("PLAN", [["a", 500, 1, 1, 4, 0.5]], 6, 10, "9999-12-30 08:00").message).toContain("year 9999");
  });

  it("keeps a cell's text within what a cell holds", () => {
    const rows = Array.from({ length: 2000 }, (_, i) => [`a piece with a long name ${i}`, 1, 0.5, 0.5, 1, 0.5]);
    const [line] = linesOf(spill("PLAN", rows, 60, 60, "", undefined, [["wrap minutes per piece", 0]]));
    expect((line.pieces as string).length).toBeLessThan(32767);
    expect(line.pieces).toMatch(/\d and more$/);
  });
});

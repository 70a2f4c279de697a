import { bathOf } from "../../../taskpane/drawings/bath";
import { within } from "../../within";
import { asked, drawn, marks } from "./drawn";

const inch = 0.0254;

describe("the chamber that is drawn", () => {
  it("holds the pieces of ARRANGE, its stack and the foam room", () => {
    const bath = bathOf(asked("ARRANGE", 6, 10, 0.75, 0.75, 5, 16, 0.45))!;
    expect((bath.layers! - 1) * bath.places!.length + bath.last!).toBe(16);
    within(bath.foam!, (10 * inch) / 3, 1e-12);
    expect(bath.depth + bath.foam!).toBeLessThanOrEqual(bath.height! * (1 + 1e-9));
    // The least cover, half an inch, is left in the end.
    expect(bath.depthAfter!).toBeGreaterThanOrEqual(bath.stack! + inch / 2 - 1e-9);
  });
  it("stands as deep as FLUIDLEVEL says", () => {
    const { contract, given } = asked("FLUIDLEVEL", 6, 1.14, 104);
    within(bathOf({ ...asked("HEADROOM", 6, 10, 1.14, 104) })!.depth, contract.run(given) as number, 1e-12);
  });
  it("covers the stack of FILL by the cover, once the wood has its fill", () => {
    within(bathOf(asked("FILL", 6, 5, 104, 0.4))!.depthAfter!, 6 * inch, 1e-12);
  });
  describe("and cut open", () => {
    const { chamberDrawing, aboveDrawing } = drawn<typeof import("../../../taskpane/drawings/chamber")>("chamber.ts");
    it.each([
      { what: "sides out of step with the middle", call: ["PERLOAD", 6, 11, 0.75, 0.75, 5], columns: 6 },
      { what: "lying pieces, one on top", call: ["ARRANGE", 6, 10, 0.75, 0.75, 5, 16], columns: 1 },
      { what: "quarter turns and a part layer", call: ["ARRANGE", 8, 18, 0.75, 0.75, 2.5, 70], columns: 7 },
      { what: "a layer that is not full", call: ["ARRANGE", 12, 18, 2, 2, 9, 14], columns: 5 },
      { what: "a tray with pieces on one side", call: ["ARRANGE", "8 x 5 in", 10, 0.75, 1.5, 5, 7], columns: 1 },
      { what: "a tray of two kinds of rows", call: ["ARRANGE", "20 x 20 in", 10, 2, 2, 11, 9], columns: 5 },
      { what: "a joint all across the middle", call: ["ARRANGE", 4.6, 12, 1.5, 1.5, 5, 3], columns: 2 },
    ] as const)("shows what the line in the view from above crosses: $what", ({ call: [name, ...typed], columns }) => {
      const read = asked(name, ...typed);
      const bath = bathOf(read)!;
      const { picture } = aboveDrawing(bath)!;
      const [{ y1: saw }] = marks(picture, "saw");
      const met = (mark: string) => marks(picture, mark).filter(({ y, height }) => y < saw && saw < y + height);
      expect(met("(?:wood|lower|free)")).toHaveLength(columns);

      const section = chamberDrawing(bath, read.units).picture;
      const pieces = marks(section, "wood");
      const layers = [...new Set(pieces.map(({ y }) => y))].sort((a, b) => b - a).map((at) => pieces.filter(({ y }) => y === at));
      expect(layers).toHaveLength(bath.layers!);
      expect(layers.at(-1)).toHaveLength(met("wood").length);
      for (const below of layers.slice(0, -1)) expect(below).toHaveLength(columns);
      expect(met("wood").length).toBeGreaterThan(0);
      expect(marks(picture, "wood")).toHaveLength(bath.last!);

      // Side by side in the same places, at the two drawings' scales.
      const share = (all: Record<string, number>[]) => {
        const left = Math.min(...all.map(({ x }) => x));
        const wide = Math.max(...all.map(({ x, width }) => x + width)) - left;
        return all.map(({ x }) => (x - left) / wide).sort((a, b) => a - b);
      };
      const above = share(met("wood"));
      for (const [i, at] of share(layers.at(-1)!).entries()) within(at, above[i], 0.01);
    });
  });
  it("is none for a function of another subject", () => expect(bathOf(asked("DYE", 2))).toBeUndefined());
});

import type { SVGTemplateResult } from "lit";
import { drawn, marks, markup } from "./drawn";

describe("the plan that is drawn", () => {
  const { planned, loadDrawings, week, told } = drawn<typeof import("../../../taskpane/drawings/planned")>("planned.ts");
  const list = [
    ["box elder", 30, 0.75, 0.75, 5, 0.45, "blue"],
    ["maple", 12, 1.5, 1.5, 2.5, 0.5, "blue"],
    ["birch", 9, 0.375, 1.5, 5, 0.5, "red"],
  ];
  const shop = [
    ["tub", 4.5],
    ["tub height", 10],
  ];
  const asked = (start?: string) =>
    planned({ name: "PLAN", cells: [list, [[12]], [[12]], start ? [[start]] : undefined, undefined, shop], answer: [] } as never)!;
  const plan = asked("2026-03-14 08:00");
  const { loads } = plan.plan;
  const saidIn = (picture: SVGTemplateResult) => [...markup(picture).matchAll(/<text[^>]*>([^<]*)<.text>/g)].map(([, words]) => words);

  it("shows every piece of every load where it was packed: inside the tub, none over another in a layer", () => {
    for (const [at, { count }] of loads.entries()) {
      const [above] = loadDrawings(plan, at);
      const pieces = marks(above.picture, 'kind [^ "]*');
      const floors = marks(above.picture, "fluid walled");
      // Layers that look alike are drawn once.
      expect(pieces.length).toBeLessThanOrEqual(count);
      expect(pieces.length).toBeGreaterThan(0);
      for (const { x, y, width, height } of pieces) {
        const inside = floors.some(({ cx, cy, r }) =>
          [x, x + width].every((px) => [y, y + height].every((py) => Math.hypot(px - cx, py - cy) <= r + 0.1)),
        );
        expect(inside).toBe(true);
      }
      const apart = (a: Record<string, number>, b: Record<string, number>, low: "x" | "y", size: "width" | "height") =>
        a[low] + a[size] <= b[low] + 0.11 || b[low] + b[size] <= a[low] + 0.11;
      const overlaps = pieces.flatMap((a, i) =>
        pieces.slice(i + 1).filter((b) => !apart(a, b, "x", "width") && !apart(a, b, "y", "height")),
      );
      expect(overlaps).toEqual([]);
    }
  });

  it("draws from above to scale: sides as their sizes", () => {
    const [above] = loadDrawings(plan, 0);
    const [{ r }] = marks(above.picture, "fluid walled");
    const inches = (side: number) => (side / (2 * r)) * 4.5;
    const sizes = new Set(list.flatMap(([, , ...sides]) => sides.slice(0, 3) as number[]));
    for (const { width, height } of marks(above.picture, 'kind [^ "]*'))
      for (const side of [width, height]) expect(Math.min(...[...sizes].map((size) => Math.abs(size - inches(side))))).toBeLessThan(0.02);
  });

  it("gives each row a letter, the same in picture and legend, with its count in this load", () => {
    for (const [at, { shares, count }] of loads.entries()) {
      const [above] = loadDrawings(plan, at);
      const lettered = above.legend.filter(([, , letter]) => letter);
      expect(lettered.map(([, words]) => words)).toEqual(shares.map(({ part, count }) => `${part.row.label}: ${count}`));
      expect(lettered.reduce((sum, [, words]) => sum + Number(words.split(": ")[1]), 0)).toBe(count);
      const letters = new Set(saidIn(above.picture).filter((words) => /^[A-Z]$/.test(words)));
      for (const letter of letters) expect(lettered.map(([, , own]) => own)).toContain(letter);
    }
  });

  it("draws the week with every pull, soak and bake on the days and hours it takes", () => {
    const { picture, says } = week(plan, 0);
    const pulls = new Set(loads.map(({ pull }) => pull)).size;
    expect(marks(picture, "vacuum")).toHaveLength(pulls);
    expect(marks(picture, "baked")).toHaveLength(loads.reduce((sum, { batches }) => sum + batches.length, 0));
    expect(marks(picture, "soaking").length).toBeGreaterThanOrEqual(loads.length);
    expect(saidIn(picture)).toEqual(expect.arrayContaining(["6 AM", "noon", "6 PM", "Sat, Mar 14", "Sun, Mar 15"]));
    expect(says).toContain("load 1: under vacuum at Sat, Mar 14, ");
  });

  it("counts days and hours from the start where the plan has no dates", () => {
    const undated = asked();
    expect(saidIn(week(undated, 0).picture)).toEqual(expect.arrayContaining(["Day 1", "Day 2"]));
    expect(told(undated, 0)).toMatchObject({
      startBy: "Day 1, 8 AM (hour 0)",
      done: expect.stringMatching(/^Day \d, .* [AP]M \(hour [\d.]+\)$/),
    });
  });

  it("is none where nothing can be planned", () =>
    expect(planned({ name: "PLAN", cells: [[["elm", 1, 9, 9, 9, 0.5]], [[6]], [[8]]], answer: [] } as never)).toBeUndefined());
});

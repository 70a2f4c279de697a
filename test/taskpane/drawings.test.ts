import { join } from "node:path";
import { buildSync } from "esbuild";
import type { SVGTemplateResult } from "lit";
import type { Cells } from "../../shared/columns";
import { catalogue } from "../../src/catalogue";
import { remaining, slab } from "../../src/cure/slab";
import { shareAt, temperatures, warmingOf } from "../../taskpane/drawings/baking";
import { bathOf } from "../../taskpane/drawings/bath";
import { valuesOf } from "../../taskpane/given";
import { within } from "../within";

const asked = (name: string, ...typed: (number | string)[]) =>
  valuesOf(
    catalogue.find((contract) => contract.name === name)!,
    typed.map((cell): Cells => [[cell]]),
    0,
  );
const inch = 0.0254;

/** The drawings as the pane has them: what draws comes as ES modules, so it is bundled first. */
function drawn<M>(file: string): M {
  const entry = join(__dirname, "../../taskpane/drawings", file);
  const { outputFiles } = buildSync({ entryPoints: [entry], bundle: true, platform: "node", format: "cjs", write: false });
  const module = { exports: {} };
  new Function("module", "exports", "require", outputFiles[0].text)(module, module.exports, require);
  return module.exports as M;
}

const markup = (part: unknown): string => {
  if (Array.isArray(part)) return part.map(markup).join("");
  if (typeof part !== "object" || part === null) return String(part);
  const { strings, values } = part as SVGTemplateResult;
  return strings.map((words, i) => words + (i < values.length ? markup(values[i]) : "")).join("");
};

/** The elements of a class in a picture, with their numbers. */
const marks = (picture: SVGTemplateResult, mark: string): Record<string, number>[] =>
  [...markup(picture).matchAll(new RegExp(`class="?${mark}"?([^>]*)>`, "g"))].map(([, rest]) =>
    Object.fromEntries([...rest.matchAll(/(\w+)="?([\d.-]+)/g)].map(([, name, value]) => [name, Number(value)])),
  );

describe("the blank that is drawn", () => {
  const piece = slab(0.01, 8, 0.15, 7e5);
  it.each([60, 300, 1200])("has after %s s what the model has, in its middle and on its face", (seconds) => {
    within(shareAt(piece, seconds, 0), remaining(piece, seconds, 0).share, 1e-6);
    within(shareAt(piece, seconds, 1), remaining(piece, seconds, 1).share, 1e-6);
  });
  it("falls from the middle to the face", () => {
    const shares = [0, 0.25, 0.5, 0.75, 1].map((at) => shareAt(piece, 300, at));
    expect([...shares].sort((a, b) => b - a)).toEqual(shares);
  });
});

describe("a piece in the oven", () => {
  it("ends where its core is up to temperature", () => {
    const warming = warmingOf(asked("BAKE", 0.75, 0.75, 5, 0.4))!;
    within(temperatures(warming, warming.until).core, ((190 - 32) * 5) / 9, 1e-6);
    expect(temperatures(warming, warming.until).skin).toBeGreaterThan(warming.target!);
  });
  it("cools to what COOLDOWN asks for", () => {
    const warming = warmingOf(asked("COOLDOWN", 0.75, 0.75, 5, 0.4))!;
    within(temperatures(warming, warming.until / 1.25).core, ((80 - 32) * 5) / 9, 1e-6);
  });
  it("is drawn for CORETEMP as far as was asked, and not at all for no time", () => {
    expect(warmingOf(asked("CORETEMP", 30, 0.75))!.until).toBe(1800);
    expect(warmingOf(asked("CORETEMP", 0, 0.75))).toBeUndefined();
  });
});

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
    const { chamberDrawing, aboveDrawing } = drawn<typeof import("../../taskpane/drawings/chamber")>("chamber.ts");
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

describe("the plan that is drawn", () => {
  const { planned, loadDrawings, week, told } = drawn<typeof import("../../taskpane/drawings/planned")>("planned.ts");
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

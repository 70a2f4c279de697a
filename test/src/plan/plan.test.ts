import type { Fault } from "../../../shared/outcome";
import { catalogue, explain } from "../../../src/catalogue";
import { ask, cells, fault, spill, type Typed } from "../../ask";
import { near, within } from "../../within";
import { byHand, inDays, type Line, linesOf, midnight, start } from "./cases";

describe("PLAN", () => {
  it("plans thirty pieces of 1 x 1 x 4 in as a person would by hand", () => {
    // Tray 4 x 4 in, 9 in high, a third for foam: 6 in, less 1 in of cover: 5. Upright 16 stand 4 in; lying 4 to a layer and 5
    // layers make 20. So 30 are 2 loads, 20 and 10: the fewer go last, for they are sooner done. Each takes up
    // 4 in³ × 0.5 × 0.6 = 1.2 in³. 20: 16 × (5 + 1) − 80 = 16 in³ cover them, 16 × 5.5 − 80 + 24 = 32 are needed. 10, in 3
    // layers: 16 × 4 − 40 = 24, and 16 × 3.5 − 40 + 12 = 28.
    // Drips: 18 in² × 0.01 in a piece, 3.6 in³. On hand: 0, +40 − 24 − 3.6 = 12.4, 28 needed: 2 packets of 10.
    const bake = ask("BAKE", 1, 1, 4, 0.77) as number;
    const lines = linesOf(spill("PLAN", [["pens", 30, 1, 1, 4, 0.77]], [[4, 4]], 9, start, undefined, byHand));
    expect(lines.map((line) => [line.load, line.pieces, line.color, line.count, line.packets])).toEqual([
      [1, "20 pens", "", 20, 4],
      [2, "10 pens", "", 10, 2],
    ]);
    lines.forEach((line, i) => {
      near(line.solids, [80, 40][i]);
      near(line["to pour"], [16, 24][i] / 57.75);
      near(line["to add"], [16, 4][i] / 57.75);
      near(line["taken up"], [24, 12][i] / 57.75);
      near(line["to mix"], [40, 20][i] / 57.75);
      near(line.dye, (0.25 * [40, 20][i]) / 57.75);
      expect(line["use by"]).toBe(midnight + 92);
      near(line["bake minutes"], bake);
      // Loading 9:00 to 9:30; taken out 8:00 to 8:30, the next loaded to 9:00, 20 minutes of wrapping; a shelf 4 in wide and
      // 10 deep holds seven: three batches, then two.
      const clock = [
        { in: [0, 9, 30], out: [1, 8, 0], wrapped: [1, 9, 20], batches: 3 },
        { in: [1, 9, 0], out: [2, 8, 0], wrapped: [2, 8, 40], batches: 2 },
      ][i];
      within(line.in, inDays(midnight, clock.in), 1e-9);
      within(line.out, inDays(midnight, clock.out), 1e-9);
      within(line["to oven"], inDays(midnight, clock.wrapped), 1e-9);
      within(line.done, inDays(midnight, clock.wrapped) + (clock.batches * bake) / 1440, 1e-9);
    });
  });

  it("has exactly these headers", () => {
    expect(spill("PLAN", [["pens", 30, 1, 1, 4, 0.77]], 6, 10)[0]).toEqual(
      "load,pieces,color,count,solids,to pour,to add,taken up,to mix,packets,dye,use by,in,out,to oven,bake minutes,done".split(","),
    );
  });

  it("loads sizes together in the order typed, however a size is written", () => {
    const pieces = [
      ["maple", 5, "3/4 in", 0.75, 5, 0.45],
      ["knife", 3, 1, 2, 5, 0.45],
      ["elder", 6, "19.05 mm", "0.75", "127 mm", 0.38],
    ];
    expect(linesOf(spill("PLAN", pieces, 6, 12)).map((line) => [line.pieces, line.count])).toEqual([["5 maple, 3 knife, 6 elder", 14]]);
  });

  it("lets no odd piece ride alone", () => {
    const most = ask("PERLOAD", 6, 12, 0.75, 0.75, 5, 0.45) as number;
    for (const order of ["best", "as typed"]) {
      const lines = linesOf(spill("PLAN", [["a", 2 * most + 1, 0.75, 0.75, 5, 0.45]], 6, 12, "", undefined, [["order", order]]));
      expect(lines).toHaveLength(3);
      expect(Math.min(...lines.map(({ count }) => count as number))).toBeGreaterThan(1);
    }
  });

  it("holds of one size what PERLOAD says", () => {
    for (const [chamber, height, t, w, l] of [
      [6, 10, 0.75, 0.75, 5],
      [12, 12, 1, 1.5, 6],
      ["8 x 5 in", 9, 0.5, 2, 4],
    ] as const) {
      const most = ask("PERLOAD", chamber, height, t, w, l) as number;
      expect(spill("PLAN", [["a", most, t, w, l, 0.4]], chamber, height)).toHaveLength(2);
      expect(spill("PLAN", [["a", most + 1, t, w, l, 0.4]], chamber, height)).toHaveLength(3);
    }
  });

  it("takes up what each wood takes, by the fullness of its row, and bakes as long as the slowest", () => {
    const rows = [
      ["light", 4, 1, 1, 4, 0.35],
      ["dense", 6, 1, 1, 4, 0.7, "", 0.3],
    ];
    const [line] = linesOf(spill("PLAN", rows, 6, 10));
    near(line["taken up"], (ask("UPTAKE", 16, 0.35) as number) + (ask("UPTAKE", 24, 0.7, 0.3) as number));
    const dense = ask("BAKE", 1, 1, 4, 0.7, [["fullness", 0.3]]) as number;
    near(line["bake minutes"], Math.max(ask("BAKE", 1, 1, 4, 0.35) as number, dense));
  });

  it("keeps colors apart, each with resin of its own; clear takes no dye", () => {
    const rows = [
      ["a", 5, 1, 1, 4, 0.5, "Blue"],
      ["b", 5, 1, 1, 4, 0.5, "clear"],
      ["c", 5, 1, 1, 4, 0.5, "blue "],
      ["d", 5, 1, 1, 4, 0.5, 0],
    ];
    const lines = linesOf(spill("PLAN", rows, 6, 10, start));
    const of = (color: string) => lines.find((line) => line.color === color)!;
    expect(lines).toHaveLength(3);
    expect(of("Blue").pieces).toBe("5 a, 5 c");
    expect(of("clear").dye).toBe(0);
    near(of("").dye, 0.25 * (of("")["to mix"] as number));
    const list = Object.fromEntries(spill("SHOPPINGLIST", rows, 6, 10, start).map(([name, amount]) => [name, amount]));
    expect(list["packets, Blue"]).toBe(of("Blue").packets);
    expect(list).toHaveProperty(["resin left, no color"]);
  });

  it("knows woods by name, each as GRAVITY has it", () => {
    const named = spill("PLAN", [["a", 5, 1, 1, 4, "maple, silver"]], 6, 10);
    expect(named).toEqual(spill("PLAN", [["a", 5, 1, 1, 4, ask("GRAVITY", "silver maple") as number]], 6, 10));
  });

  it("answers the same in SI", () => {
    const us = linesOf(spill("PLAN", [["a", 30, 1, 1, 4, 0.5]], 6, 10, start));
    const si = linesOf(spill("PLAN", [["a", 30, 25.4, 25.4, 101.6, 0.5]], 152.4, 254, start, undefined, "SI"));
    expect(si).toHaveLength(us.length);
    si.forEach((line, i) => {
      near(line["to pour"], (us[i]["to pour"] as number) * 0.946352946, 1e-9);
      within(line.done, us[i].done as number, 1e-9);
    });
  });

  it("plans tubs: as many under vacuum as stand in the chamber, soaking beside it, the next in meanwhile", () => {
    // Jars of 3 in with walls of 1/8: 3.25 outside; three want 2.1547 of them, 7.003 in.
    const rows = [["a", 60, 0.75, 0.75, 4, 0.5]];
    const jars = (chamber: number, more: (string | number)[][] = []) =>
      linesOf(spill("PLAN", rows, chamber, 10, start, undefined, [["tub", 3], ["tub height", 8], ...more]));
    const together = (lines: Line[]) => lines.filter((line) => line.in === lines[0].in).length;
    expect(together(jars(7.01))).toBe(3);
    expect(together(jars(7))).toBe(2);
    expect(together(jars(12))).toBe(7);
    expect(together(jars(7.01, [["tubs", 2]]))).toBe(2);
    // Six jars and a chamber for three: two pulls on the first day.
    const six = jars(7.01, [["tubs", 6]]);
    expect(new Set(six.filter(({ in: at }) => (at as number) < midnight + 1).map(({ in: at }) => at)).size).toBe(2);
    expect(fault("PLAN", rows, 3.2, 10, start, undefined, [["tub", 3]]).message).toBe(
      "the tub is wider than the chamber: 3.25 in outside, and the chamber is 3.2 in inside",
    );
    expect(
      fault("PLAN", rows, 9, 10, start, undefined, [
        ["tub", 3],
        ["tub height", 11],
      ]).message,
    ).toBe("the tub is higher than the chamber: 11 in, and the chamber is 10 in inside");
    expect(fault("PLAN", rows, 9, 10, start, undefined, [["tub", "9 x 3 in"]]).error).toBe("#N/A");
  });

  it("lets no more resin stand in tubs than the shop wants to tie up", () => {
    const rows = [["a", 60, 0.75, 0.75, 5, 0.5]];
    const shop = (most: number) => [["most resin", most]];
    const free = linesOf(spill("PLAN", rows, 12, 12, start));
    const tight = linesOf(spill("PLAN", rows, 12, 12, start, undefined, shop(2.2)));
    expect(free).toHaveLength(1);
    expect(tight.length).toBeGreaterThan(1);
    for (const line of tight) expect((line["to pour"] as number) + (line["to add"] as number)).toBeLessThanOrEqual(2.2 * (1 + 1e-9));
    const [none] = linesOf(spill("PLAN", rows, 12, 12, start, undefined, shop(1)));
    expect(none.load).toBe("a");
    expect((none.count as Fault).message).toMatch(/^even the smallest load with this row needs [\d.]+ qt of resin/);
  });

  it("shows in its working both ends of “most resin”", () => {
    const rows = [["a", 60, 0.75, 0.75, 5, 0.5]];
    const { lines } = explain(
      catalogue.find(({ name }) => name === "PLAN")!,
      [rows, 12, 12, start].map((typed) => cells(typed as Typed)),
    ) as {
      lines: readonly (readonly [string, string])[];
    };
    const said = Object.fromEntries(lines);
    const number = (name: string) => Number.parseFloat(said[name]);
    expect(number("days with that")).toBeGreaterThan(number("days with no limit on resin"));
    expect(number("resin to mix with that")).toBeLessThan(number("resin to mix with no limit"));
    const least = number("lowest “most resin” that works");
    expect(
      linesOf(spill("PLAN", rows, 12, 12, start, undefined, [["most resin", least * 1.001]])).every(({ load }) => typeof load === "number"),
    ).toBe(true);
  });

  it("goes through the rows in turn where it is told to", () => {
    const rows = [
      ["short", 20, 1, 1, 2, 0.5],
      ["long", 20, 1, 1, 5, 0.5],
      ["short again", 20, 1, 1, 2, 0.5],
    ];
    const lines = linesOf(spill("PLAN", rows, 6, 10, start, undefined, [["order", "as typed"]]));
    const firsts = lines.map((line) => rows.findIndex(([label]) => (line.pieces as string).split(", ")[0].endsWith(` ${label}`)));
    expect(firsts).toEqual([...firsts].sort((a, b) => a - b));
    const best = linesOf(spill("PLAN", rows, 6, 10, start));
    expect(best.length).toBeLessThanOrEqual(lines.length);
  });
});

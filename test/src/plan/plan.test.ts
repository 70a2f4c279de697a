import fc from "fast-check";
import type { Fault } from "../../../shared/outcome";
import { ask, fault, spill } from "../../ask";
import { near, within } from "../../within";
import { anyCase, inDays, type Line, linesOf } from "./cases";

const start = "2026-03-14 09:00";
const midnight = 46095;

/** A tray and a wood that can be reckoned by hand: gravity 0.77 is half void, floats level in this fluid and needs no ballast. */
const byHand = [
  ["gap", 0],
  ["resin density", 0.77],
  ["packet makes", "10 in³"],
  ["drips", "0.01 in"],
  ["oven shelves", 1],
  ["oven width", 4],
];

describe("PLAN", () => {
  it("plans thirty pieces of 1 x 1 x 4 in as a person would by hand", () => {
    // Tray 4 x 4 in, 9 in high, a third for foam: 6 in. Upright 16 pieces stand 4 in, with the cover 5; each takes up
    // 4 in³ × 0.5 × 0.6 = 1.2 in³, 0.075 in of depth: 13 a load. 30 pieces are 3 loads of 10.
    // Ten lying are 3 layers: 16 × (3 + 1) − 40 + 12 = 36 in³; upright 16 × 5 − 40 + 12 = 52 in³. So 36 in³ = 36/57.75 qt.
    // Drips: 18 in² × 0.01 in × 10 = 1.8 in³. On hand: 0, +40 −12 −1.8 = 26.2, +10 = 22.4, +20 = 28.6.
    const bake = ask("BAKE", 1, 1, 4, 0.77) as number;
    const lines = linesOf(spill("PLAN", [["pens", 30, 1, 1, 4, 0.77]], [[4, 4]], 9, start, byHand));
    expect(lines.map((line) => [line.load, line.pieces, line.count, line.packets])).toEqual([
      [1, "pens", 10, 4],
      [2, "pens", 10, 1],
      [3, "pens", 10, 2],
    ]);
    lines.forEach((line, i) => {
      near(line.solids, 40);
      near(line["fluid in chamber"], 36 / 57.75);
      near(line["taken up"], 12 / 57.75);
      near(line["to mix"], [40, 10, 20][i] / 57.75);
      near(line.dye, (0.25 * [40, 10, 20][i]) / 57.75);
      expect(line["use by"]).toBe(midnight + 92);
      near(line["bake minutes"], bake);
      // Shelf 4 in wide, 10 deep: seven pieces, so two batches.
      const clock = [
        { in: [0, 9, 30], out: [1, 8, 0], wrapped: [1, 9, 10] },
        { in: [1, 9, 0], out: [2, 8, 0], wrapped: [2, 9, 10] },
        { in: [2, 9, 0], out: [3, 8, 0], wrapped: [3, 8, 40] },
      ][i];
      within(line.in, inDays(midnight, clock.in), 1e-9);
      within(line.out, inDays(midnight, clock.out), 1e-9);
      within(line["to oven"], inDays(midnight, clock.wrapped), 1e-9);
      within(line.done, inDays(midnight, clock.wrapped) + (2 * bake) / 1440, 1e-9);
    });
  });

  it("has exactly these headers", () => {
    expect(spill("PLAN", [["pens", 30, 1, 1, 4, 0.77]], 6, 10)[0]).toEqual(
      "load,pieces,count,solids,fluid in chamber,taken up,to mix,packets,dye,use by,in,out,to oven,bake minutes,done".split(","),
    );
  });

  it("uses the resin on hand first, brings it to the dye rate, and knows its age", () => {
    // 36 in³ wanted, 20 on hand with 0.5 tsp per qt: 16 in³ to mix, 2 packets; 0.25 × 40 − 0.5 × 20 = 0 tsp·in³/qt of dye.
    const tub = [...byHand, ["resin on hand", "20 in³"], ["resin dye rate", 0.5], ["resin mixed on", "2026-01-31"]];
    const pieces = [["pens", 20, 1, 1, 4, 0.77]];
    const [first, second] = linesOf(spill("PLAN", pieces, [[4, 4]], 9, start, tub));
    near(first["to mix"], 20 / 57.75);
    within(first.dye, 0, 1e-12);
    expect(first["use by"]).toBe(ask("EXPIRY", "2026-01-31"));
    near(second["to mix"], 10 / 57.75);
    // Left 20 + 20 − 13.8 = 26.2 at the rate; 10 more want 2.5 tsp·in³/qt.
    near(second.dye, 2.5 / 57.75);
  });

  it("says how much too strong the resin on hand is, and goes on with what that leaves", () => {
    const tub = [...byHand, ["resin on hand", "36 in³"], ["resin dye rate", 0.5]];
    const [first, second] = linesOf(spill("PLAN", [["pens", 20, 1, 1, 4, 0.77]], [[4, 4]], 9, start, tub));
    expect((first.dye as Fault).error).toBe("#N/A");
    expect(first["to mix"]).toBe(0);
    // 22.2 in³ at 0.5 are left; 20 in³ more (13.8 in two packets) would want 0.25 × 42.2 − 0.5 × 22.2 < 0.
    expect((second.dye as Fault).error).toBe("#N/A");
  });

  it("dates the resin on hand by the start where nobody wrote the day down", () => {
    const tub = [["resin on hand", 1]];
    expect(linesOf(spill("PLAN", [["a", 1, 1, 1, 4, 0.5]], 6, 10, start, tub))[0]["use by"]).toBe(ask("EXPIRY", "2026-03-14"));
  });

  it("asks to mix afresh for a load that comes out after the use-by day", () => {
    const old = [
      ["resin on hand", 1],
      ["resin mixed on", "2025-12-15"],
    ];
    const [first, second] = linesOf(spill("PLAN", [["a", 30, 1.5, 1.5, 4, 0.5]], 6, 10, start, old));
    expect(first["use by"]).toBe(ask("EXPIRY", "2025-12-15"));
    expect(second["use by"]).toEqual({
      error: "#N/A",
      message: "mix afresh: the resin on hand is good until 2026-03-15, and the load comes out on 2026-03-16",
    });
  });

  it("counts days from 0 and knows no use-by without a date", () => {
    const [line] = linesOf(spill("PLAN", [["a", 1, 1, 1, 4, 0.5]], 6, 10));
    within(line.in, 8.5 / 24, 1e-12);
    within(line.out, 1 + 8 / 24, 1e-12);
    expect(line["use by"]).toBe("");
  });

  it("counts back from ready by, to the latest opening that still serves", () => {
    const pieces = [["a", 100, 0.75, 0.75, 5, 0.45]];
    const due = "2026-04-01 10:00";
    const back = linesOf(spill("PLAN", pieces, 6, 12, "", [["ready by", due]]));
    const last = back.at(-1)!;
    expect(last.done).toBeLessThanOrEqual(46113 + 10 / 24);
    const opening = Math.floor(back[0].in as number) + 8 / 24;
    expect(linesOf(spill("PLAN", pieces, 6, 12, opening))).toEqual(back);
    expect(linesOf(spill("PLAN", pieces, 6, 12, opening + 1)).at(-1)!.done).toBeGreaterThan(46113 + 10 / 24);
    expect(fault("PLAN", pieces, 6, 12, "", [["ready by", 62]]).message).toBe("ready by is too early: the plan takes 4 days");
  });

  it("counts back so whatever the shop: all done in time, and not so from the opening a day later", () =>
    fc.assert(
      fc.property(anyCase, fc.double({ min: 46000, max: 46400, noNaN: true }), (shop, due) => {
        const loads = linesOf(shop.spill("PLAN", "", { "ready by": due })).filter((line) => typeof line.load === "number");
        if (!loads.length) return;
        const opening =
          Math.floor((loads[0].in as number) - (shop.settings["loading minutes"] as number) / 1440 + 1e-9) +
          (shop.settings.opens as number) / 24;
        const last = (start: number) => linesOf(shop.spill("PLAN", start))[loads.length - 1].done as number;
        within(last(opening), loads.at(-1)!.done as number, 1e-8);
        expect(last(opening)).toBeLessThanOrEqual(due + 1e-8);
        expect(last(opening + 1)).toBeGreaterThan(due - 1e-8);
      }),
      { numRuns: 60 },
    ));

  it("loads rows of one size together in the order given, however the size is typed, and keeps sizes apart", () => {
    const pieces = [
      ["maple", 5, "3/4 in", 0.75, 5, 0.45],
      ["knife", 3, 1, 2, 5, 0.45],
      ["elder", 6, "19.05 mm", "0.75", "127 mm", 0.38],
    ];
    expect(linesOf(spill("PLAN", pieces, 6, 12)).map((line) => [line.pieces, line.count])).toEqual([
      ["maple, elder", 11],
      ["knife", 3],
    ]);
  });

  it("balances the loads of a size, the larger first, and names in each the rows it holds", () => {
    const rows = [
      ["a", 20, 0.75, 0.75, 5, 0.45],
      ["b", 21, 0.75, 0.75, 5, 0.45],
      ["c", 20, 0.75, 0.75, 5, 0.45],
    ];
    const most = ask("PERLOAD", 6, 12, 0.75, 0.75, 5, 0.45) as number;
    const lines = linesOf(spill("PLAN", rows, 6, 12));
    expect(lines).toHaveLength(Math.ceil(61 / most));
    expect(lines.map((line) => [line.pieces, line.count])).toEqual([
      ["a, b", 31],
      ["b, c", 30],
    ]);
  });

  it("arranges several woods by the lightest, takes up what each takes, bakes as long as the slowest", () => {
    const rows = [
      ["light", 4, 1, 1, 4, 0.35],
      ["dense", 6, 1, 1, 4, 0.7],
    ];
    const [line] = linesOf(spill("PLAN", rows, 6, 10));
    const [, , , fluid] = spill("ARRANGE", 6, 10, 1, 1, 4, 10, 0.35)[0];
    near(line["fluid in chamber"], fluid as number);
    near(line["taken up"], (ask("UPTAKE", 16, 0.35) as number) + (ask("UPTAKE", 24, 0.7) as number));
    near(line["bake minutes"], Math.max(ask("BAKE", 1, 1, 4, 0.35) as number, ask("BAKE", 1, 1, 4, 0.7) as number));
  });

  it("knows woods by name, each as GRAVITY has it", () => {
    const named = spill("PLAN", [["a", 5, 1, 1, 4, "maple, silver"]], 6, 10);
    expect(named).toEqual(spill("PLAN", [["a", 5, 1, 1, 4, ask("GRAVITY", "silver maple") as number]], 6, 10));
  });

  it("passes over a heading, empty rows and counts of 0", () => {
    const rows = [
      ["what", "how many", "thick", "wide", "long", "wood"],
      ["", "", "", "", "", ""],
      ["a", 5, 1, 1, 4, 0.5],
      ["none", 0, "?", "?", "?", "?"],
      ["b", 5, 1, 1, 4, 0.5],
    ];
    expect(linesOf(spill("PLAN", rows, 6, 10)).map((line) => [line.pieces, line.count])).toEqual([["a, b", 10]]);
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
    expect(lines[0]).toMatchObject({ load: 1, pieces: "good", count: 5 });
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
      expect(cells).toEqual(Array(14).fill({ error: expect.stringMatching(/^#(VALUE!|N\/A)$/), message: expect.any(String) }));
    }
    const said = lines.slice(1).map((line) => (line.pieces as Fault).message);
    expect(said[0]).toBe("count is missing: type a value such as 12");
    expect(said[1]).toBe("count must be from 0 to 1000000: -1 is outside");
    expect(said[2]).toBe("count must be a whole number: 2.5 is not");
    expect(said[3]).toContain("elfwood");
    expect(said[4]).toContain("missing");
    expect(said[5]).toContain("larger than an oven shelf");
    expect(said[6]).toContain("larger than an oven shelf");
    expect(said[7]).toContain("follow the maker's schedule");
    expect(said[8]).toContain("“wide” is not a length");
    expect(said[9]).toContain("5 pcs");
  });

  it("says which side is too much for the chamber", () => {
    const [line] = linesOf(spill("PLAN", [["a", 5, 1, 4, 8, 0.5]], 4, 8));
    expect((line.count as Fault).error).toBe("#N/A");
    expect((line.count as Fault).message).toMatch(/too (wide|long|thick)/);
  });

  it("leaves out of a size only the wood that the chamber does not take", () => {
    // One piece: 4 in³ in a tray of 1.01 x 1.01 in. The lighter takes up more and stands deeper than the foam room allows.
    const shop = [
      ["gap", 0],
      ["cover", 0.5],
      ["foam room", 0],
    ];
    const rows = [
      ["light", 1, 1, 1, 4, 0.1],
      ["dense", 1, 1, 1, 4, 1.3],
    ];
    const lines = linesOf(spill("PLAN", rows, [[1.01, 1.01]], 5.5, "", shop));
    expect(lines.map((line) => [line.load, line.count])).toEqual([
      [1, 1],
      ["light", expect.objectContaining({ error: "#N/A" })],
    ]);
    expect(lines[0].pieces).toBe("dense");
  });

  it("refuses a bake longer than the day is open, and such a vacuum", () => {
    const short = [
      ["opens", 8],
      ["closes", 9],
      ["vacuum hours", 0.25],
    ];
    const [line] = linesOf(spill("PLAN", [["a", 5, 1.5, 1.5, 4, 0.5]], 6, 10, "", short));
    expect((line.done as Fault).message).toMatch(/^a bake of [\d.]+ min is longer than the open hours, 1 h$/);
    expect(fault("PLAN", [["a", 5, 1, 1, 4, 0.5]], 6, 10, "", [["vacuum hours", 12]])).toEqual({
      error: "#N/A",
      message: "loading and vacuum take 12.5 h, and somebody is there for 12 h: vacuum is never left alone",
    });
  });

  it("takes opens and closes as hours or as clock times", () => {
    const rows = [["a", 5, 1, 1, 4, 0.5]];
    const hours = [
      ["opens", 9],
      ["closes", 18],
    ];
    const times = [
      ["opens", 0.375],
      ["closes", 0.75],
    ];
    expect(spill("PLAN", rows, 6, 10, start, times)).toEqual(spill("PLAN", rows, 6, 10, start, hours));
    expect(fault("PLAN", rows, 6, 10, start, [["opens", 20]]).message).toBe("closes must be later than opens: type hours such as 8 and 20");
  });

  it("gives the header alone, or header and errors, where nothing can be planned", () => {
    expect(spill("PLAN", [["", "", "", "", "", ""]], 6, 10)).toHaveLength(1);
    expect(linesOf(spill("PLAN", [["a", 1, 9, 9, 9, 0.5]], 6, 10))).toHaveLength(1);
  });

  it("answers the same in SI", () => {
    const us = linesOf(spill("PLAN", [["a", 30, 1, 1, 4, 0.5]], 6, 10, start));
    const si = linesOf(spill("PLAN", [["a", 30, 25.4, 25.4, 101.6, 0.5]], 152.4, 254, start, "SI"));
    expect(si).toHaveLength(us.length);
    si.forEach((line, i) => {
      near(line["fluid in chamber"], (us[i]["fluid in chamber"] as number) * 0.946352946, 1e-9);
      within(line.done, us[i].done as number, 1e-9);
    });
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
    ).toBe("2000000 pieces are more than a plan takes, 1000000: plan fewer at a time");
    expect(fault("PLAN", [["a", 1e6, 1.5, 1.5, 4, 0.5]], 4, 8).message).toContain("loads are more than a plan takes, 100000");
    expect(fault("PLAN", [["a", 500, 1, 1, 4, 0.5]], 6, 10, "9999-12-30 08:00").message).toContain("year 9999");
  });

  it("keeps a cell's text within what a cell holds", () => {
    const rows = Array.from({ length: 2000 }, (_, i) => [`a piece with a long name ${i}`, 1, 0.5, 0.5, 1, 0.5]);
    const [line] = linesOf(spill("PLAN", rows, 60, 60));
    expect((line.pieces as string).length).toBeLessThan(32767);
    expect(line.pieces).toMatch(/\d and more$/);
  });

  it("holds its books, its clock and its people to the rules, whatever the shop", () =>
    fc.assert(
      fc.property(anyCase, (shop) => {
        const lines = linesOf(shop.spill("PLAN"));
        const good = lines.filter((line) => typeof line.load === "number");
        const bad = lines.filter((line) => typeof line.load !== "number");
        checkCounts(good, bad, shop);
        checkBooks(good, shop);
        checkClock(good, shop);
      }),
      { numRuns: 150 },
    ));
});

type Shop = ReturnType<typeof anyCase.generate>["value"];

function checkCounts(good: Line[], bad: Line[], { pieces }: Shop) {
  const lost = bad.map((line) => line.load);
  const given = pieces.filter(([label]) => !lost.includes(label)).reduce((sum, [, count]) => sum + (count as number), 0);
  expect(good.reduce((sum, line) => sum + (line.count as number), 0)).toBe(given);
  expect(good.map((line) => line.load)).toEqual(good.map((_, i) => i + 1));
}

function checkBooks(good: Line[], { settings, dripsOf }: Shop) {
  const packet = settings["packet makes"] as number;
  let onHand = settings["resin on hand"] as number;
  for (const line of good) {
    const [fluid, mixed, packets] = ["fluid in chamber", "to mix", "packets"].map((name) => line[name] as number);
    near(mixed, packets * packet, 1e-9);
    expect(onHand + mixed).toBeGreaterThanOrEqual(fluid * (1 - 1e-9));
    if (packets) expect(onHand + mixed - packet).toBeLessThan(fluid);
    onHand = onHand + mixed - (line["taken up"] as number) - dripsOf([line]);
  }
}

function checkClock(good: Line[], { settings }: Shop) {
  const hour = 1 / 24;
  const loading = (settings["loading minutes"] as number) / 1440;
  const [opens, closes] = [(settings.opens as number) * hour, (settings.closes as number) * hour];
  const bit = 1e-8;
  const isOpen = (from: number, to: number) => {
    const day = Math.floor(from + bit);
    expect(from - day).toBeGreaterThanOrEqual(opens - bit);
    expect(to - day).toBeLessThanOrEqual(closes + bit);
  };
  const number = (line: Line, name: string) => line[name] as number;
  good.forEach((line, i) => {
    const [vacuumOn, out, toOven, done] = ["in", "out", "to oven", "done"].map((name) => number(line, name));
    const bake = number(line, "bake minutes") / 1440;
    isOpen(vacuumOn - loading, vacuumOn + (settings["vacuum hours"] as number) * hour);
    isOpen(out, out + loading);
    isOpen(toOven, toOven + bake);
    isOpen(done - bake, done);
    expect(out).toBeGreaterThanOrEqual(vacuumOn + ((settings["vacuum hours"] as number) + (settings["soak hours"] as number)) * hour - bit);
    expect(toOven).toBeGreaterThanOrEqual(out + loading - bit);
    expect(done).toBeGreaterThanOrEqual(toOven + bake - bit);
    const before = good[i - 1];
    if (!before) return;
    expect(vacuumOn - loading).toBeGreaterThanOrEqual(number(before, "out") + loading - bit);
    expect(toOven).toBeGreaterThanOrEqual(number(before, "done") - bit);
  });
}

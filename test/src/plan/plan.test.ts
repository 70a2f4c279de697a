import type { Fault } from "../../../shared/outcome";
import { catalogue, explain } from "../../../src/catalogue";
import { ask, cells, fault, spill, type Typed } from "../../ask";
import { near, within } from "../../within";
import { inDays, type Line, linesOf } from "./cases";

const start = "2026-03-14 09:00";
const midnight = 46095;

/** A tray and a wood that can be reckoned by hand: gravity 0.77 is half void, floats level in this fluid and needs no ballast. */
const byHand = [
  ["gap", 0],
  ["resin density", 0.77],
  ["least cover", 0.5],
  ["packet makes", "10 in³"],
  ["drips", "0.01 in"],
  ["oven shelves", 1],
  ["oven width", 4],
];

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

  it("uses the resin on hand first, brings it to the dye rate, and knows its age", () => {
    // 32 in³ needed, 20 on hand: 12 missing, 2 packets, and 0.25 × 40 − 0.3 × 20 of dye. Then 28 of the 12.4 left: 2 more.
    const tub = [...byHand, ["resin on hand", "20 in³"], ["resin dye rate", 0.3], ["resin mixed on", "2026-01-31"]];
    const pieces = [["pens", 30, 1, 1, 4, 0.77]];
    const [first, second] = linesOf(spill("PLAN", pieces, [[4, 4]], 9, start, undefined, tub));
    near(first["to mix"], 20 / 57.75);
    near(first.dye, (0.25 * 40 - 0.3 * 20) / 57.75);
    expect(first["use by"]).toBe(ask("EXPIRY", "2026-01-31"));
    near(second["to mix"], 20 / 57.75);
    near(second.dye, (0.25 * 20) / 57.75);
  });

  it("opens no packet for a shortage that only thins the cover", () => {
    // 15 pieces want 20 in³ to be covered and 30 in all; 30 on hand are enough, 29 are not.
    const at = (onHand: number) =>
      linesOf(
        spill("PLAN", [["pens", 15, 1, 1, 4, 0.77]], [[4, 4]], 9, start, undefined, [...byHand, ["resin on hand", `${onHand} in³`]]),
      )[0];
    expect(at(30)).toMatchObject({ packets: 0 });
    expect(at(29)).toMatchObject({ packets: 1 });
    // Ten alone lie in 3 layers: 16 × 4 − 40 = 24 in³ cover them, 16 × 3.5 − 40 + 12 = 28 are needed.
    const thin = linesOf(
      spill("PLAN", [["pens", 10, 1, 1, 4, 0.77]], [[4, 4]], 9, start, undefined, [
        ...byHand,
        ["least cover", 0.1],
        ["fullness", 0.1],
        ["resin on hand", "22 in³"],
      ]),
    )[0];
    expect(thin.packets).toBe(0);
    near(thin["to pour"], 22 / 57.75);
    expect(thin["to add"]).toBe(0);
  });

  it("says how much too strong the resin on hand is, and goes on with what that leaves", () => {
    const tub = [...byHand, ["resin on hand", "36 in³"], ["resin dye rate", 0.5]];
    const [first] = linesOf(spill("PLAN", [["pens", 15, 1, 1, 4, 0.77]], [[4, 4]], 9, start, undefined, tub));
    expect(first.dye).toMatchObject({ error: "#N/A", message: expect.stringMatching(/^too strong already/) });
    expect(first["to mix"]).toBe(0);
  });

  it("asks what the resin on hand was dyed at where the dye rate is no longer its default", () => {
    const tub = [
      ["resin on hand", 1],
      ["dye rate", 0.5],
    ];
    const one = (more: (string | number)[][]) =>
      linesOf(spill("PLAN", [["a", 1, 1, 1, 4, 0.5]], 6, 10, start, undefined, [...tub, ...more]))[0].dye;
    expect(one([])).toMatchObject({ error: "#VALUE!", message: expect.stringMatching(/^type the dye rate of the resin on hand/) });
    expect(one([["resin dye rate", 0.25]])).toBeGreaterThan(0);
    expect(one([["dye rate", 0.25]])).toBeGreaterThanOrEqual(0);
  });

  it("dates the resin on hand by the first loading where nobody wrote the day down", () => {
    const tub = [["resin on hand", 1]];
    expect(linesOf(spill("PLAN", [["a", 1, 1, 1, 4, 0.5]], 6, 10, start, undefined, tub))[0]["use by"]).toBe(ask("EXPIRY", "2026-03-14"));
  });

  it("never mixes a load into resin that expires before the load is out: that is poured away and a fresh one begun", () => {
    const old = [
      ["resin on hand", 1],
      ["resin mixed on", "2025-12-15"],
    ];
    const pieces = [["a", 40, 1.5, 1.5, 4, 0.5]];
    const lines = linesOf(spill("PLAN", pieces, 6, 10, start, undefined, old));
    expect(lines.map((line) => line["use by"])).toEqual([
      ask("EXPIRY", "2025-12-15"),
      ...lines.slice(1).map(() => ask("EXPIRY", "2026-03-15")),
    ]);
    const list = Object.fromEntries(
      spill("SHOPPINGLIST", pieces, 6, 10, start, undefined, old).map(([name, amount]) => [name, amount as number]),
    );
    expect(list["resin discarded"]).toBeGreaterThan(0);
    const older = [old[0], ["resin mixed on", "2025-01-15"]];
    expect(linesOf(spill("PLAN", pieces, 6, 10, start, undefined, older))[0]["use by"]).toBe(ask("EXPIRY", "2026-03-14"));
    within(spill("SHOPPINGLIST", pieces, 6, 10, start, undefined, older).find(([name]) => name === "resin discarded")![1], 1, 1e-12);
  });

  it("counts days from 1 in words where it has no date, and months of 30 days", () => {
    const [line] = linesOf(spill("PLAN", [["a", 1, 1, 1, 4, 0.5]], 6, 10));
    expect([line.in, line.out, line["use by"]]).toEqual(["day 1 08:30", "day 2 08:00", "day 91"]);
    expect(line.done).toMatch(/^day 2 \d\d:\d\d$/);
    expect(fault("PLAN", [["a", 1, 1, 1, 4, 0.5]], 6, 10, "", undefined, [["days off", "2026-12-25"]]).error).toBe("#VALUE!");
    const twice = [["days off", "Tue"]];
    expect(linesOf(spill("PLAN", [["a", 1, 1, 1, 4, 0.5]], 6, 10, "", undefined, twice))[0].out).toBe("day 3 08:00");
  });

  it("keeps days off free, but for soaking", () => {
    // The 14th of March 2026 is a Saturday.
    const out = (off: string) =>
      Math.floor(linesOf(spill("PLAN", [["a", 1, 1, 1, 4, 0.5]], 6, 10, start, undefined, [["days off", off]]))[0].out as number);
    expect([out("Mon"), out("Sun"), out("Sun, mon"), out("sun 2026-03-16")]).toEqual([46096, 46097, 46098, 46098]);
    expect(linesOf(spill("PLAN", [["a", 1, 1, 1, 4, 0.5]], 6, 10, start, undefined, [["days off", "Saturday"]]))[0].in).toBeCloseTo(
      46096 + 8.5 / 24,
      6,
    );
    for (const wrong of ["someday", "13/14/2026", "sun, mon, tue, wed, thu, fri, sat"])
      expect(fault("PLAN", [["a", 1, 1, 1, 4, 0.5]], 6, 10, start, undefined, [["days off", wrong]]).error).toBe("#VALUE!");
  });

  it("counts back from ready by, to the latest opening that still serves", () => {
    const pieces = [["a", 100, 0.75, 0.75, 5, 0.45]];
    const due = "2026-04-01 10:00";
    for (const off of ["", "Sun, Wed"]) {
      const shop = [["days off", off]];
      const back = linesOf(spill("PLAN", pieces, 6, 12, "", undefined, [...shop, ["ready by", due]]));
      expect(back.at(-1)!.done).toBeLessThanOrEqual(46113 + 10 / 24);
      const opening = Math.floor(back[0].in as number) + 8 / 24;
      const from = (at: number) => linesOf(spill("PLAN", pieces, 6, 12, at, undefined, shop));
      expect(from(opening)).toEqual(back);
      expect(from(opening + 1).at(-1)!.done).toBeGreaterThan(46113 + 10 / 24);
    }
    expect(fault("PLAN", pieces, 6, 12, "", undefined, [["ready by", 62]]).message).toMatch(
      /^ready by is too early: the plan takes \d days$/,
    );
  });

  it("says by how much a load is late where both start and ready by are given", () => {
    const late = linesOf(spill("PLAN", [["a", 1, 1, 1, 4, 0.5]], 6, 10, start, undefined, [["ready by", "2026-03-14 09:00"]]))[0]
      .done as Fault;
    expect(late).toMatchObject({ error: "#N/A", message: expect.stringMatching(/^late by 2[3-5] h \d+ min$/) });
    expect(linesOf(spill("PLAN", [["a", 1, 1, 1, 4, 0.5]], 6, 10, start, undefined, [["ready by", "2026-03-16"]]))[0].done).toBeLessThan(
      46097,
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

  it("takes each color's resin from the table of resins", () => {
    const rows = [
      ["a", 5, 1, 1, 4, 0.5, "blue"],
      ["b", 5, 1, 1, 4, 0.5, "red"],
    ];
    const resins = [
      ["color", "on hand", "mixed on", "dye rate"],
      ["BLUE", 9, "2026-02-01", 0.25],
      ["green", 3, "", ""],
    ];
    const lines = linesOf(spill("PLAN", rows, 6, 10, start, resins));
    const of = (color: string) => lines.find((line) => line.color === color)!;
    expect(of("blue")).toMatchObject({ packets: 0, "use by": ask("EXPIRY", "2026-02-01") });
    expect(of("red").packets).toBeGreaterThan(0);
    expect(fault("PLAN", rows, 6, 10, start, [...resins, ["Green", 1, "", ""]])).toMatchObject({
      error: "#VALUE!",
      message: expect.stringContaining("Green"),
    });
    expect(
      fault("PLAN", rows, 6, 10, start, [
        ["blue", "much", "", ""],
        ["red", "much", "", ""],
      ]),
    ).toMatchObject({ error: "#VALUE!" });
  });

  it("gives the shop's resin to the only color there is, and to none of several", () => {
    const shop = [["resin on hand", 9]];
    const packets = (...colors: string[]) =>
      linesOf(
        spill(
          "PLAN",
          colors.map((color) => ["a", 5, 1, 1, 4, 0.5, color]),
          6,
          10,
          start,
          undefined,
          shop,
        ),
      ).map((line) => (line.packets as number) > 0);
    expect(packets("blue")).toEqual([false]);
    expect(packets("blue", "red")).toEqual([true, true]);
    expect(packets("blue", "").sort()).toEqual([false, true]);
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

  it("refuses a bake longer than the day is open, and such a vacuum", () => {
    const short = [
      ["opens", 8],
      ["closes", 9],
      ["vacuum hours", 0.25],
    ];
    const [line] = linesOf(spill("PLAN", [["a", 5, 1.5, 1.5, 4, 0.5]], 6, 10, "", undefined, short));
    expect((line.done as Fault).message).toMatch(/^a bake of [\d.]+ min is longer than the open hours, 1 h$/);
    expect(fault("PLAN", [["a", 5, 1, 1, 4, 0.5]], 6, 10, "", undefined, [["vacuum hours", 12]])).toEqual({
      error: "#N/A",
      message: "loading and vacuum take 12.5 h, and the shop is open for 12 h: never leave vacuum alone",
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
    expect(spill("PLAN", rows, 6, 10, start, undefined, times)).toEqual(spill("PLAN", rows, 6, 10, start, undefined, hours));
    expect(fault("PLAN", rows, 6, 10, start, undefined, [["opens", 20]]).message).toBe(
      "closes must be later than opens: type hours such as 8 and 20",
    );
  });

  it("gives the header alone, or header and errors, where nothing can be planned", () => {
    expect(spill("PLAN", [["", "", "", "", "", ""]], 6, 10)).toHaveLength(1);
    expect(linesOf(spill("PLAN", [["a", 1, 9, 9, 9, 0.5]], 6, 10))).toHaveLength(1);
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

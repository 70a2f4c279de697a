import { ask, fault, spill } from "../../ask";
import { near, within } from "../../within";
import { byHand, linesOf, start } from "./cases";

describe("PLAN and its resin", () => {
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
});

import { ask, fault, spill } from "../../ask";
import { near } from "../../within";

describe("BAKECURVE", () => {
  const curve = spill("BAKECURVE", 0.75, 0.75, 5, 0.4) as (string | number)[][];

  it("has a header and 25 points, from going in to coming out", () => {
    expect(curve[0]).toEqual(["minutes", "core", "surface"]);
    expect(curve).toHaveLength(26);
    expect(curve[1]).toEqual([0, expect.closeTo(70, 10), expect.closeTo(70, 10)]);
    near(curve[25][0], ask("BAKE", 0.75, 0.75, 5, 0.4) as number, 1e-12);
    near(curve[25][1], 190, 1e-9);
  });

  it("agrees with CORETEMP on the way, the surface ahead of the core, both rising", () => {
    for (let i = 2; i <= 25; i++) {
      const [minutes, core, surface] = curve[i] as number[];
      near(core, ask("CORETEMP", minutes, 0.75, 0.75, 5, 0.4) as number, 1e-12);
      expect(surface).toBeGreaterThan(core);
      expect(core).toBeGreaterThan(curve[i - 1][1] as number);
      expect(surface).toBeGreaterThan(curve[i - 1][2] as number);
    }
  });

  it("goes on through the hold to the end of the bake", () => {
    const held = spill("BAKECURVE", 0.75, 0.75, 5, 0.4, 2, [["hold", 20]]);
    near(held[2][0], (ask("BAKE", 0.75, 0.75, 5, 0.4) as number) + 20, 1e-12);
    expect(held[2][1]).toBeGreaterThan(190);
  });

  it("takes 2 to 500 points", () => {
    expect(spill("BAKECURVE", 0.75, "", "", "", 2)).toHaveLength(3);
    expect(spill("BAKECURVE", 0.01, 200, 200, 0.05, 500)).toHaveLength(501);
    expect(fault("BAKECURVE", 0.75, "", "", "", 1).message).toBe("points must be from 2 to 500: 1 is outside");
    expect(fault("BAKECURVE", 0.75, "", "", "", 2.5).message).toBe("points must be a whole number: 2.5 is not");
  });

  it("refuses as BAKE does", () => {
    expect(fault("BAKECURVE", 3, 3, 3).message).toContain("follow the maker's schedule");
    expect(fault("BAKECURVE", 1, 1, 5, 0.4, 25, [["core", 250]]).message).toContain("core must be cooler than the oven");
  });
});

import fc from "fast-check";
import { ask, fault } from "../../ask";
import { near, within } from "../../within";

describe("CORETEMP", () => {
  it("is the room's temperature when the piece goes in and the oven's in the end", () => {
    near(ask("CORETEMP", 0, 0.75, 0.75, 5), 70, 1e-12);
    near(ask("CORETEMP", 100000, 0.75, 0.75, 5), 200, 1e-12);
  });

  it("undoes BAKE: at least the core asked for, and that very core where neither hold nor shortest bake adds", () =>
    fc.assert(
      fc.property(
        fc.double({ min: 0.01, max: 2, noNaN: true }),
        fc.double({ min: 0.01, max: 8, noNaN: true }),
        fc.double({ min: 0.05, max: 1.54, noNaN: true }),
        fc.double({ min: 90, max: 199.9, noNaN: true }),
        fc.constantFrom(0, 30),
        fc.constantFrom(0, 15),
        (thickness, length, gravity, core, shortest, hold) => {
          const shop = [
            ["core", core],
            ["shortest bake", shortest],
            ["hold", hold],
          ];
          const minutes = ask("BAKE", thickness, thickness, length, gravity, shop) as number;
          const reached = ask("CORETEMP", minutes, thickness, thickness, length, gravity, shop) as number;
          expect(reached).toBeGreaterThanOrEqual(core);
          if (!hold && minutes > shortest) within(reached, core, 1e-6);
        },
      ),
    ));

  it("speaks SI when asked", () => {
    near(ask("CORETEMP", 30, 19.05, 19.05, 127, 0.4, "SI"), (((ask("CORETEMP", 30, 0.75, 0.75, 5, 0.4) as number) - 32) * 5) / 9, 1e-12);
  });

  it("refuses time that runs backward, a piece too thick, an oven cooler than the room", () => {
    expect(fault("CORETEMP", -1, 1, 1).message).toBe("minutes in the oven must be from 0 min to 1000000 min: -1 min is outside");
    expect(fault("CORETEMP", 30, 3, 3, 3)).toEqual({
      error: "#N/A",
      message: "too thick to bake by calculation (over 2 in, the setting “thickest”): follow the maker's schedule",
    });
    expect(
      fault("CORETEMP", 30, 1, 1, 3, 0.4, [
        ["oven", 100],
        ["room", 110],
      ]).message,
    ).toBe("room must be cooler than the oven: 110 °F is not below 100 °F");
  });
});

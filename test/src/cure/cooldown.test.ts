import { secondsTo } from "../../../src/cure/block";
import { coolingSlabs } from "../../../src/cure/cooldown";
import { ask, fault } from "../../ask";
import { near } from "../../within";
import { marchedTo } from "./finite";

describe("COOLDOWN", () => {
  const wood = { thickness: 0.01905, width: 0.01905, length: 0.127, gravity: 0.4, fullness: 0.6 };

  it("falls from 200 °F to 80 °F in a room at 70 °F: a thirteenth of the difference is left, at 10 W/m²K", () => {
    const series = secondsTo(coolingSlabs(wood), 10 / 130) / 60;
    near(ask("COOLDOWN", 0.75, 0.75, 5, 0.4), series, 1e-9);
    const k = 0.144756;
    near(series, marchedTo({ sides: [0.01905, 0.01905, 0.127], k: [k, k, 1.8 * k], heat: 1.3269e6, h: 10 }, 1 / 13) / 60, 0.03);
  });

  it("stops 10 °F above a warm room", () =>
    near(
      ask("COOLDOWN", 0.75, 0.75, 5, 0.4, "", [["room", 90]]),
      ask("COOLDOWN", 0.75, 0.75, 5, 0.4, 100, [["room", 90]]) as number,
      1e-12,
    ));

  it("takes no time to a temperature that the oven never passed", () => expect(ask("COOLDOWN", 0.75, 0.75, 5, 0.4, 200)).toBe(0));

  it("refuses a goal that the room never lets it reach, and a piece too thick", () => {
    expect(fault("COOLDOWN", 0.75, 0.75, 5, 0.4, 70)).toEqual({
      error: "#VALUE!",
      message: "temperature to cool to must be above the room: 70 °F is not above 70 °F",
    });
    expect(fault("COOLDOWN", 3, 3, 3).error).toBe("#N/A");
  });
});

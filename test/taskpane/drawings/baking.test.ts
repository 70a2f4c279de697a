import { remaining, slab } from "../../../src/cure/slab";
import { shareAt, temperatures, warmingOf } from "../../../taskpane/drawings/baking";
import { within } from "../../within";
import { asked } from "./drawn";

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

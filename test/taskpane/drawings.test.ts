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
    expect(bath.depthAfter!).toBeGreaterThanOrEqual(bath.stack! + inch - 1e-9);
  });
  it("stands as deep as FLUIDLEVEL says", () => {
    const { contract, given } = asked("FLUIDLEVEL", 6, 1.14, 104);
    within(bathOf({ ...asked("HEADROOM", 6, 10, 1.14, 104) })!.depth, contract.run(given) as number, 1e-12);
  });
  it("covers the stack of FILL by the cover, once the wood has its fill", () => {
    within(bathOf(asked("FILL", 6, 5, 104, 0.4))!.depthAfter!, 6 * inch, 1e-12);
  });
  it("is none for a function of another subject", () => expect(bathOf(asked("DYE", 2))).toBeUndefined());
});

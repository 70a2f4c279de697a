import { demoBook } from "../../sheet/book";
import { model } from "../../sheet/engine";
import { blanks, shop } from "../../src/demo";
import { spill } from "../ask";
import { near } from "../within";
import { addresses } from "./addresses";

// The engine times every change on the console.
jest.spyOn(console, "debug").mockImplementation();

const book = model(demoBook());
const cell = (sheetId: string, address: string) => book.getters.getEvaluatedCell({ sheetId, ...addresses(address) });
const down = (column: string) => blanks.map((_, i) => cell("blanks", `${column}${i + 8}`));

const range = Object.entries(shop);
const of = <K extends keyof (typeof blanks)[number]>(key: K) => blanks.map((piece) => piece[key]);
const volumes = blanks.map(({ thickness, width, length }) => thickness * width * length);
const gravities = spill("GRAVITY", of("species")).flat();
const moistures = spill("MOISTURE", of("weight"), of("dryWeight")).flat();

describe("the hundred blanks", () => {
  it.each([
    { column: "J", name: "moisture", expected: moistures },
    { column: "K", name: "gravity", expected: gravities },
    { column: "L", name: "voids", expected: spill("VOIDS", gravities, moistures).flat() },
    { column: "M", name: "resin", expected: spill("UPTAKE", volumes, gravities, undefined, moistures, range).flat() },
    { column: "N", name: "bake", expected: spill("BAKE", of("thickness"), of("width"), of("length"), gravities, range).flat() },
  ])("$name is one formula that agrees with a call in every row", ({ column, expected }) => {
    down(column).forEach(({ value, message }, i) => {
      const one = expected[i];
      if (typeof one === "object") expect([value, message]).toEqual([one.error, one.message]);
      else near(value, one as number);
    });
    const spilled = book.getters.getSpreadZone({ sheetId: "blanks", ...addresses(`${column}8`) });
    expect(spilled!.bottom - spilled!.top).toBeGreaterThanOrEqual(99);
  });

  it("has three rows with their reasons", () => {
    expect(
      down("M")
        .filter(({ type }) => type === "error")
        .map(({ message }) => message),
    ).toEqual([
      "weight is lighter than when dry: weigh again",
      expect.stringContaining("silver maple"),
      "the wood is too wet to take resin: dry it first",
    ]);
    expect(cell("blanks", "F4").value).toBe(3);
  });

  it("adds up what the good rows give", () => {
    const taken = down("M").reduce((sum, { value }) => sum + (typeof value === "number" ? value : 0), 0);
    near(cell("blanks", "I3").value, taken);
    const solids = volumes.filter((_, i) => typeof cell("blanks", `M${i + 8}`).value === "number").reduce((a, b) => a + b);
    near(cell("blanks", "I4").value, spill("FILL", 12, 5.5, solids, taken, range)[0][0] as number);
    near(cell("blanks", "I5").value, (cell("blanks", "I4").value as number) / 4);
    expect(cell("blanks", "L4").formattedValue).toBe("2026-06-14");
  });

  it("shows nothing in the rows kept for more pieces", () =>
    expect(["G", "J", "K", "L", "M", "N"].map((column) => cell("blanks", `${column}108`).value)).toEqual(["", "", "", "", "", ""]));

  it("follows the settings table", () => {
    const own = model(demoBook());
    const at = (address: string) => own.getters.getEvaluatedCell({ sheetId: "blanks", ...addresses(address) });
    const before = at("M8").value as number;
    const line = Array.from({ length: 80 }, (_, row) => row).find(
      (row) => own.getters.getEvaluatedCell({ sheetId: "shop", col: 0, row }).value === "fullness",
    )!;
    own.dispatch("UPDATE_CELL", { sheetId: "shop", col: 1, row: line, content: "1.1" });
    expect(at("M8").message).toContain("fullness");
    own.dispatch("UPDATE_CELL", { sheetId: "shop", col: 1, row: line, content: "0.275" });
    near(at("M8").value, before / 2);
  });
});

import { demoBook } from "../../sheet/book";
import { model } from "../../sheet/engine";
import { stages, wrong } from "../../sheet/todaylines";
import { cellOf, wrongCells } from "../../sheet/todaysheet";
import { catalogue } from "../../src/catalogue";
import { shop } from "../../src/demo";
import { ask, spill } from "../ask";
import { near } from "../within";
import { addresses } from "./addresses";

// The engine times every change on the console.
jest.spyOn(console, "debug").mockImplementation();

const book = model(demoBook());
const cell = (address: string) => book.getters.getEvaluatedCell({ sheetId: "today", ...addresses(address) });
const value = (id: string) => cell(cellOf(id)).value;
const range = Object.entries(shop);
const lines = Array.from({ length: 120 }, (_, i) => `B${i + 1}`);

const onOtherSheets = ["PLAN", "SHOPPINGLIST", "RUNCOST", "PIECECOST", "SPLITCOST", "PRICETAG", "WHATTOBUY"];

describe("today's run", () => {
  it("computes every line but those that are meant to be wrong", () => {
    const errors = lines.filter((address) => cell(address).type === "error");
    expect(errors).toEqual(wrongCells);
  });

  it("tells in each of those what is wrong", () => {
    for (const address of wrongCells) expect(cell(address).message).toMatch(/\w{3,}.* \w{3,}/);
    expect(wrongCells.length).toBeGreaterThanOrEqual(5);
  });

  it("shows no error outside that column", () => {
    const errors = Object.values(book.getters.getEvaluatedCells("today")).filter(({ type }) => type === "error");
    expect(errors).toHaveLength(wrongCells.length);
  });

  it("uses every function of a run", () => {
    const formulas = [...stages.flatMap((stage) => stage.lines), ...wrong].map(({ formula }) => formula ?? "").join(" ");
    const own = catalogue.filter(({ name }) => !["VERSION", "BAKECURVE", ...onOtherSheets].includes(name));
    expect(
      own.map(({ name }) => name).filter((name) => !formulas.includes(`${name}(`) && !formulas.includes(`{${name.toLowerCase()}}`)),
    ).toEqual([]);
  });

  it("takes the first cell alone of what the screen of lids answers", () => {
    const calls = [...stages.flatMap((stage) => stage.lines), ...wrong].flatMap(({ formula }) => formula?.match(/.*LIDLOAD.*/) ?? []);
    expect(calls.length).toBeGreaterThanOrEqual(2);
    for (const call of calls) expect(call).toMatch(/INDEX\(PORE\.LIDLOAD\([^()]*\),1,1\)/);
  });

  it("agrees with calls", () => {
    const gravity = ask("GRAVITY", "silver maple") as number;
    near(value("gravity"), gravity);
    near(value("uptake"), ask("UPTAKE", 30 * 0.75 * 0.75 * 5, gravity, undefined, undefined, range) as number);
    const [way, , stack] = spill("ARRANGE", 6, 12, 0.75, 0.75, 5, 30, gravity, range)[0];
    expect(value("way")).toBe(way);
    near(value("stack"), stack as number);
    near(value("bake"), ask("BAKE", 0.75, 0.75, 5, gravity, range) as number);
    expect(value("isdry")).toBe(true);
    expect(value("lid")).toBe("not refused, which proves nothing");
  });
});

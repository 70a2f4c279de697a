import { quantity } from "../../shared/argument";
import { define } from "../../shared/contract";
import { cellsOf, type Entry, fieldsOf, formulaOf, isAbout, isMissing, meantOf, troubleOf } from "../../shared/form";
import { cell } from "../../shared/result";
import { column } from "../../shared/whole";
import { call, catalogue, readShop } from "../../src/catalogue";

const us = readShop(undefined);
const contract = (name: string) => catalogue.find((one) => one.name === name)!;
const field = (name: string, arg: string, shop = us) => fieldsOf(contract(name), shop).find((one) => one.name === arg)!;
const typed = (text: string): Entry => ({ typed: text });

const weights = define({
  name: "WEIGHTS",
  per: "call",
  asks: "",
  args: { weights: column(quantity("weight", "weights", 20, [0.1, 100])) },
  returns: cell(quantity("weight", "sum", 1)),
  ...{ format: "0", equation: "", source: "", accuracy: "", cautions: [], worked: { typed: [], gives: 0 } },
  run: () => 0 as never,
});

describe("the form of a contract", () => {
  it.each(catalogue.map(({ name }) => name))("%s: a field an argument, with label and hint, and never the shop", (name) => {
    const fields = fieldsOf(contract(name), us);
    expect(fields.map((one) => one.name)).toEqual(Object.keys(contract(name).args));
    for (const { label, hints, required } of fields) {
      expect(label).toMatch(/^\p{Lu}|^\d/u);
      if (required) expect(hints[0]).toBeTruthy();
    }
  });

  it("tells unit, sample and range in the shop's units", () => {
    expect(field("FILL", "stack")).toMatchObject({ unit: "in", required: true, hints: ["such as 5 in", "from 0.01 in to 200 in"] });
    expect(field("FILL", "stack", readShop([["SI"]]))).toMatchObject({ unit: "mm", hints: ["such as 127 mm", "from 0.254 mm to 5080 mm"] });
  });

  it("tells what holds when an argument is left out", () => {
    expect(field("DYE", "rate").hints.at(-1)).toBe("if left out: the shop's dye rate, 0.25 tsp per qt");
    const shop = readShop([
      ["dye rate", 0.5],
      ["cover", 2],
    ]);
    expect(field("DYE", "rate", shop).hints.at(-1)).toBe("if left out: the shop's dye rate, 0.5 tsp per qt");
  });

  it("asks for a chamber in one line, and for a column in several", () => {
    expect(field("FILL", "chamber").control).toBe("line");
    expect(field("PLAN", "pieces").control).toBe("lines");
    expect(fieldsOf(weights, us)[0]).toMatchObject({ control: "lines", hints: ["such as 20 oz", "a line each"] });
  });
});

describe("what was typed into a field", () => {
  it.each([
    { text: "0.75", cells: [[0.75]] },
    { text: " 12 ", cells: [[12]] },
    { text: "3/4 in", cells: [["3/4 in"]] },
    { text: "1,5", cells: [["1,5"]] },
    { text: "", cells: undefined },
    { text: "  ", cells: undefined },
  ])("$text is $cells", ({ text, cells }) => expect(cellsOf(field("FILL", "stack"), typed(text))).toEqual(cells));

  it("is a column where several are asked for", () =>
    expect(cellsOf(fieldsOf(weights, us)[0], typed("20\n21.5; 3/4 oz\n\n"))).toEqual([[20], [21.5], ["3/4 oz"]]));

  it.each([
    { text: "5 kg", says: "is a weight, not a length" },
    { text: "1,5", says: "has a comma" },
    { text: "-1", says: "must be from 0.01 in to 200 in" },
  ])("$text under the field: $says", ({ text, says }) => expect(troubleOf(field("FILL", "stack"), typed(text), us.units)).toContain(says));

  it("is fine where it is fine, or blank", () => {
    for (const text of ["5", "127 mm", ""]) expect(troubleOf(field("FILL", "stack"), typed(text), us.units)).toBeUndefined();
    expect(isMissing(field("FILL", "stack"), typed(""))).toBe(true);
    expect(isMissing(field("FILL", "uptake"), undefined)).toBe(false);
  });

  it("knows a message that is about it", () => {
    expect(isAbout(field("FILL", "solids"), "solids of 900 in³ do not fit")).toBe(true);
    expect(isAbout(field("FILL", "stack"), "solids of 900 in³ do not fit")).toBe(false);
  });
});

describe("a typed nought", () => {
  const thickness = field("BAKE", "thickness");

  it("is judged as any number is where the range leaves it out", () => {
    expect(troubleOf(thickness, typed("0"), us.units)).toMatch(/must be from .*: 0 in is outside/);
    expect(meantOf(thickness, typed("0"))).toEqual([["0"]]);
    expect(call(contract("MOISTURE"), [[["0"]], [["0"]]])).not.toEqual([[""]]);
  });

  it("may be a blank cell where it comes from the sheet", () => {
    const entry: Entry = { reference: "B2", cells: [[0]] };
    expect(troubleOf(thickness, entry, us.units)).toBeUndefined();
    expect(meantOf(thickness, entry)).toEqual([[0]]);
  });
});

describe("a typed table", () => {
  const pieces = field("PLAN", "pieces");
  const good = ["pens", 40, 0.75, 0.75, 5, 0.45];

  it.each([
    { text: "pens, 40, 0.75, 0.75, 5, 0.45", cells: good },
    { text: "pens; 40; 0.75; 0.75; 5; 0.45", cells: good },
    { text: "pens,40,0.75,0.75,5,0.45", cells: good },
    { text: "pens, 40, 0.75,0.75,5,0.45", cells: good },
    { text: "pens, 40, 0,75, 0,75, 5, 0,45", cells: ["pens", 40, "0,75", "0,75", 5, "0,45"] },
    { text: "pens, 1,200.5, 0.75", cells: ["pens", "1,200.5", 0.75] },
  ])("$text is $cells", ({ text, cells }) => expect(cellsOf(pieces, typed(text))).toEqual([cells]));

  it.each([
    { text: "pens, forty, 0.75,0.75,5,0.45", says: /^line 1: count: “forty” is not a number/ },
    { text: "pens, 40, 0.75, 0.75, 5, 0.45\n\npens, 40, 0,75, 0.75, 5, 0.45", says: /^line 3: thickness: “0,75” has a comma/ },
    { text: "pens", says: /^line 1: count is missing/ },
  ])("$text: $says", ({ text, says }) => expect(troubleOf(pieces, typed(text), us.units)).toMatch(says));

  it("may have headings, and stays as it was where it comes from the sheet", () => {
    const headed = "label, count, thickness, width, length, wood\npens, 40, 0.75, 0.75, 5, silver maple";
    expect(troubleOf(pieces, typed(headed), us.units)).toBeUndefined();
    expect(troubleOf(pieces, { reference: "A1:F1", cells: [["pens", "forty", 0.75, 0.75, 5, 0.45]] }, us.units)).toBeUndefined();
  });

  it("shows a line to type, where plain numbers are what it takes them for", () => {
    expect(pieces.hints).toContain("such as maple, 12, 0.75, 0.75, 5, silver maple");
    expect(field("PLAN", "pieces", readShop([["SI"]])).hints.join()).not.toContain("0.75");
    expect(pieces.hints[0]).toContain("a comma and a space between them");
  });
});

it("says where the gravity of a wood comes from", () =>
  expect(troubleOf(field("UPTAKE", "gravity"), typed("silver maple"), us.units)).toMatch(
    /is not a number: type a value such as .*; for a wood by name, PORE.GRAVITY gives it$/,
  ));

describe("the formula that goes into a cell", () => {
  const fields = fieldsOf(contract("FILL"), us);

  it("keeps the places of arguments left out, and drops what ends it", () => {
    const entries = { chamber: typed("6"), stack: typed('1 1/2"'), solids: typed("104") };
    expect(formulaOf("PORE.FILL", fields, entries, undefined)).toBe('=PORE.FILL(6,"1 1/2""",104)');
    expect(formulaOf("PORE.FILL", fields, entries, "MyShop")).toBe('=PORE.FILL(6,"1 1/2""",104,,MyShop)');
  });

  it("takes references as they are and columns as arrays", () => {
    const entries = { weights: typed("20\n21.5") };
    expect(formulaOf("PORE.WEIGHTS", fieldsOf(weights, us), entries, undefined)).toBe("=PORE.WEIGHTS({20;21.5})");
    const reference = { reference: "'My Shop'!B4", cells: [[6]] };
    expect(formulaOf("PORE.FILL", fields, { chamber: reference }, "US")).toBe("=PORE.FILL('My Shop'!B4,,,,US)");
  });

  it("never lets typed words become part of the formula", () => {
    const entries = { chamber: typed('6),WEBSERVICE("x'), stack: typed("=1+1"), solids: typed("1") };
    expect(formulaOf("PORE.FILL", fields, entries, undefined)).toBe('=PORE.FILL("6),WEBSERVICE(""x","=1+1",1)');
  });

  it("answers as the form does", () => {
    const cells = fields.map((one) =>
      cellsOf(one, { chamber: typed("6"), stack: typed("5"), solids: typed("104") }[one.name as "chamber"]),
    );
    expect(call(contract("FILL"), cells)).toEqual([[expect.closeTo(1.1367273, 6)]]);
  });
});

import type { Call } from "../../../shared/host";
import { calledIn, isOneCall } from "../../../src/calls";
import { LastCalls, plainAddress } from "../../../src/excel/lastcall";

const asked = (name: string, given: number, answer: Call["answer"][0][0]): Call => ({ name, cells: [[[given]]], answer: [[answer]] });
const one = asked("DYE", 2, 0.5);
const formula = "=PORE.DYE(A1)";

describe("the address of a cell", () => {
  it.each(["My Shop!B4", "'My Shop'!$B$4", "'[Book 1.xlsx]My Shop'!B4", "my shop!b4"])("%s is one cell", (address) =>
    expect(plainAddress(address)).toBe("my shop!B4"),
  );
  it("keeps apostrophes of a sheet's name", () => expect(plainAddress("'Ann''s week'!C1")).toBe("ann's week!C1"));
});

describe("the calls of a formula", () => {
  it.each([
    { formula: "=PORE.DYE(A1)", calls: ["DYE"] },
    { formula: "=pore.fill(pore.dye(1),2)+PORE.DYE(3)", calls: ["FILL", "DYE", "DYE"] },
    { formula: "=_xldudf_PORE_DYE(A1)", calls: ["DYE"] },
    { formula: '=A1&"PORE.DYE(1)"', calls: [] },
    { formula: "=SUM(A1)", calls: [] },
  ])("$formula", ({ formula, calls }) => expect(calledIn(formula)).toEqual(calls));

  it.each([
    { formula: "=PORE.DYE(A1)", whole: true },
    { formula: ' = PORE.FILL( (1), "a ) b" ) ', whole: true },
    { formula: "=PORE.DYE('odd ) name'!A1)", whole: true },
    { formula: "=PORE.DYE(A1)*(2)", whole: false },
    { formula: "=1+PORE.DYE(A1)", whole: false },
    { formula: "=PORE.DYE(PORE.DYE(1))", whole: false },
    { formula: "=PORE.DYE(", whole: false },
  ])("$formula is one call: $whole", ({ formula, whole }) => expect(isOneCall(formula)).toBe(whole));
});

describe("the last calls of a cell", () => {
  it("are told while formula and value are what they were", () => {
    const calls = new LastCalls();
    calls.record("Sheet1!B2", one);
    expect(calls.at("'Sheet1'!$B$2", formula, 0.5)).toEqual([one]);
  });

  it.each([
    { what: "another value", formula, shown: 0.6 },
    { what: "an error", formula, shown: "#NAME?" },
    { what: "another function", formula: "=PORE.FILL(6,5,104)", shown: 0.5 },
    { what: "no PORE formula", formula: "=A1/4", shown: 0.5 },
    { what: "no formula", formula: "", shown: 0.5 },
  ])("are not told of a cell that shows $what", ({ formula, shown }) => {
    const calls = new LastCalls();
    calls.record("Sheet1!B2", one);
    expect(calls.at("Sheet1!B2", formula, shown)).toBeUndefined();
  });

  it("keep a call within a call, which Excel calculates in a pass of its own", () => {
    const nested = "=PORE.FILL(6,5,104,PORE.DYE(A1))";
    const calls = new LastCalls();
    const outer: Call = { name: "FILL", cells: [[[6]], [[5]], [[104]], [[0.5]]], answer: [[2]] };
    for (const given of [1, 2]) {
      calls.record("S!B2", asked("DYE", given, given / 4));
      calls.settle();
      calls.record("S!B2", { ...outer, cells: [...outer.cells.slice(0, 3), [[given / 4]]] });
      calls.settle();
      expect(calls.at("S!B2", nested, 2)?.map(({ name, cells }) => [name, cells.at(-1)])).toEqual([
        ["DYE", [[given]]],
        ["FILL", [[given / 4]]],
      ]);
    }
  });

  it("forget the branch that is not taken any more", () => {
    const calls = new LastCalls();
    calls.record("S!B2", one);
    calls.settle();
    calls.record("S!B2", asked("MIX", 3, 4));
    expect(calls.at("S!B2", "=IF(A1>2,PORE.MIX(A1),PORE.DYE(A1))", 4)?.map(({ name }) => name)).toEqual(["MIX"]);
  });

  it("are told of a cell that shows the error they gave", () => {
    const fault = asked("DYE", -1, { error: "#VALUE!", message: "fluid must be 0 qt or more" });
    const calls = new LastCalls();
    calls.record("Sheet1!B2", fault);
    expect(calls.at("Sheet1!B2", formula, "#VALUE!")).toEqual([fault]);
  });

  it("are those of the newest calculation", () => {
    const calls = new LastCalls();
    const [old, other] = [asked("FILL", 1, 9), asked("DYE", 3, 0.75)];
    calls.record("Sheet1!B2", old);
    calls.settle();
    calls.record("Sheet1!B2", other);
    expect(calls.at("Sheet1!B2", "=IF(A1,PORE.FILL(1),PORE.DYE(3))", 0.75)).toEqual([other]);
  });

  it("are the newest of each name, and as many as the formula has, where one calculation asked twice", () => {
    const calls = new LastCalls();
    const all = [1, 2, 3, 4].map((fluid) => asked("DYE", fluid, fluid / 4));
    for (const call of all) calls.record("Sheet1!B2", call);
    expect(calls.at("Sheet1!B2", "=PORE.DYE(A1)+PORE.DYE(A2)", 1.75)).toEqual(all.slice(2));
  });

  it("are gone once rows moved or a sheet was renamed", () => {
    const calls = new LastCalls();
    calls.record("Sheet1!B2", one);
    calls.clear();
    expect(calls.at("Sheet1!B2", formula, 0.5)).toBeUndefined();
  });

  it("are a bounded list of cells, the oldest going first", () => {
    const calls = new LastCalls({ cells: 3, calls: 2, values: 1000 });
    for (const row of [1, 2, 3, 1, 4]) calls.record(`S!A${row}`, one);
    expect([1, 2, 3, 4].map((row) => calls.at(`S!A${row}`, formula, 0.5) !== undefined)).toEqual([true, false, true, true]);
  });

  it("are bounded in values too: a long column pushes others out", () => {
    const calls = new LastCalls({ cells: 100, calls: 8, values: 50 });
    calls.record("S!A1", one);
    calls.record("S!A2", { name: "DYE", cells: [Array.from({ length: 24 }, () => [1])], answer: Array.from({ length: 24 }, () => [1]) });
    calls.record("S!A3", one);
    expect([1, 2, 3].map((row) => calls.at(`S!A${row}`, formula, row === 2 ? 1 : 0.5) !== undefined)).toEqual([false, true, true]);
  });
});

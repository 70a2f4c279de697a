import { cellOf, cellsOf, faultOf, resultOf, resultsOf } from "../../sheet/cell";

describe("cells on their way in", () => {
  it("turns the engine's columns into rows", () => {
    const columns = [
      [{ value: "cover" }, { value: "gap" }],
      [{ value: 0.5 }, { value: 0.1 }],
    ];
    expect(cellsOf(columns)).toEqual([
      ["cover", 0.5],
      ["gap", 0.1],
    ]);
  });

  it("tells an argument left out from a blank cell", () => {
    expect(cellsOf(undefined)).toBeUndefined();
    expect(cellsOf(null as never)).toBeUndefined();
    expect(cellsOf([[{ value: null }]])).toEqual([[null]]);
  });

  it.each([
    { code: "#DIV/0!", error: "#DIV/0!" },
    { code: "#ERROR", error: "#VALUE!" },
    { code: "#REF", error: "#REF!" },
    { code: "#SPILL!", error: "#VALUE!" },
  ])("takes $code for an error", ({ code, error }) => expect(cellOf({ value: code, message: "why" })).toEqual({ error, message: "why" }));

  it("leaves text that only looks like an error", () => expect(cellOf({ value: "#17" })).toBe("#17"));
  it("gives a wordless error words", () => expect(faultOf("#N/A")).toEqual({ error: "#N/A", message: "there is no value" }));
});

describe("cells on their way out", () => {
  it("sends the number format with the number", () => expect(resultOf(0.12, "0%")).toEqual({ value: 0.12, format: "0%" }));
  it("sends an error with its words", () =>
    expect(resultOf({ error: "#VALUE!", message: "weigh again" }, "0%")).toEqual({ value: "#VALUE!", message: "weigh again" }));
  it.each([Number.NaN, Number.POSITIVE_INFINITY])("never lets %d pass", (n) => expect(resultOf(n, "0").value).toBe("#N/A"));

  it("turns rows into the engine's columns", () =>
    expect(
      resultsOf(
        [
          [1, "a"],
          [2, "b"],
        ],
        (column) => (column ? undefined : "0"),
      ),
    ).toEqual([
      [
        { value: 1, format: "0" },
        { value: 2, format: "0" },
      ],
      [{ value: "a" }, { value: "b" }],
    ]));
});

it("says how a function of ours begins where its prefix is missing", () => {
  expect(faultOf("#NAME?", 'Unknown function: "voids"')?.message).toBe("type PORE.VOIDS(…): the functions of this add-in begin so");
  expect(faultOf("#NAME?", 'Unknown function: "NOSUCH"')?.message).toBe('Unknown function: "NOSUCH"');
});

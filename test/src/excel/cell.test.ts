import { answerOf, blockOf } from "../../../src/excel/cell";

class LibraryError {
  constructor(
    readonly code: string,
    readonly message?: string,
  ) {}
}
const ErrorCode = {
  invalidValue: "#VALUE!",
  notAvailable: "#N/A",
  divisionByZero: "#DIV/0!",
  invalidNumber: "#NUM!",
  nullReference: "#NULL!",
  invalidName: "#NAME?",
};

beforeAll(() => Object.assign(globalThis, { CustomFunctions: { Error: LibraryError, ErrorCode } }));
afterAll(() => Reflect.deleteProperty(globalThis, "CustomFunctions"));

const thrown = (act: () => unknown): unknown => {
  try {
    return act();
  } catch (error) {
    return error;
  }
};

describe("an argument from Excel", () => {
  it("left out is none", () => expect([null, undefined].map(blockOf)).toEqual([undefined, undefined]));
  it("of plain cells passes as it is, without a copy", () => {
    const block = [
      [1, "a"],
      [true, null],
    ];
    expect(blockOf(block)).toBe(block);
  });
  it("may hold errors, which keep their code", () =>
    expect(blockOf([[1], [new LibraryError("#DIV/0!")], [new LibraryError("#N/A")]])).toEqual([
      [1],
      [{ error: "#DIV/0!", message: "" }],
      [{ error: "#N/A", message: "" }],
    ]));
  it.each(["#REF!", "#NAME?", "#SPILL!"])("that shows %s, which no function may give, is told in words", (code) =>
    expect(blockOf([[new LibraryError(code)]])).toEqual([[{ error: "#VALUE!", message: `a cell given shows ${code}` }]]),
  );
  it("that holds anything else is told in words", () =>
    expect(blockOf([[{ type: "Entity" }]])).toEqual([[{ error: "#VALUE!", message: "a cell given holds neither a number nor text" }]]));
  it("outside a block is a block of one cell", () => expect(blockOf(5)).toEqual([[5]]));
});

describe("an answer to Excel", () => {
  it("of values passes", () =>
    expect(
      answerOf([
        [1, "a"],
        [true, ""],
      ]),
    ).toEqual([
      [1, "a"],
      [true, ""],
    ]));
  it("that is one error is thrown with its words", () =>
    expect(thrown(() => answerOf([[{ error: "#N/A", message: "too wet" }]]))).toEqual(new LibraryError("#N/A", "too wet")));
  it("with an error in a row holds it there", () =>
    expect(answerOf([[1], [{ error: "#VALUE!", message: "weigh again" }]])).toEqual([[1], [new LibraryError("#VALUE!", "weigh again")]]));
  it("hands on an error that carries no words", () =>
    expect(answerOf([[1], [{ error: "#DIV/0!", message: "" }]])).toEqual([[1], [new LibraryError("#DIV/0!")]]));
});

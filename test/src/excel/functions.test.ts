import { catalogue } from "../../../src/catalogue";

const associated = new Map<string, (...handed: unknown[]) => unknown>();
class LibraryError {
  constructor(
    readonly code: string,
    readonly message?: string,
  ) {}
}

beforeAll(async () => {
  const associate = (id: string, run: (...handed: unknown[]) => unknown) => associated.set(id, run);
  Object.assign(globalThis, { CustomFunctions: { associate } });
  await import("../../../src/excel/functions");
  // The library adds these only once its host is ready.
  Object.assign(CustomFunctions, { Error: LibraryError, ErrorCode: { invalidValue: "#VALUE!" } });
});
afterAll(() => Reflect.deleteProperty(globalThis, "CustomFunctions"));

describe("the functions bundle", () => {
  it("gives Excel every function of the catalogue", () => expect([...associated.keys()]).toEqual(catalogue.map(({ name }) => name)));
  it("takes what stands past the last argument for the invocation", () =>
    expect(associated.get("MOISTURE")!([[104]], [[93]], { address: "Sheet1!A1" })).toEqual([[expect.closeTo(11 / 93, 12)]]));
  it("remembers what a cell asked, and not what a preview did", () => {
    associated.get("DYE")!([[2]], null, null, { address: "Sheet1!B2" });
    associated.get("DYE")!([[3]], null, null, { address: "Sheet1!B3", isInValuePreview: "TRUE" });
    const { calls } = globalThis.porewise!;
    expect(calls.at("Sheet1!B2", "=PORE.DYE(A1)", 0.5)).toEqual([{ name: "DYE", cells: [[[2]], undefined, undefined], answer: [[0.5]] }]);
    expect(calls.at("Sheet1!B3", "=PORE.DYE(A1)", 0.75)).toBeUndefined();
  });
  it("tells a fault of its own in words", () => {
    const broken = new Proxy([], {
      get() {
        throw new Error("broken");
      },
    });
    const words = "MOISTURE failed on these arguments, which is a fault of Porewise: please report them";
    expect(() => associated.get("MOISTURE")!(broken, [[93]])).toThrow(expect.objectContaining({ code: "#VALUE!", message: words }));
  });
});

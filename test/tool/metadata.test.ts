import { optional, quantity } from "../../shared/argument";
import { define, parameters } from "../../shared/contract";
import { cell } from "../../shared/result";
import { argumentWords, functionWords } from "../../shared/stub";
import { catalogue } from "../../src/catalogue";
import { functionTroubles, type Metadata, metadata, nameTroubles } from "../../tool/metadata";

const host = "https://club.example/porewise";

describe("functions.json of the catalogue", () => {
  let made: Metadata;
  beforeAll(async () => {
    made = await metadata(catalogue, host);
  });

  it("has every function, in the catalogue's order", () =>
    expect(made.functions.map(({ id, name }) => [id, name])).toEqual(catalogue.map(({ name }) => [name, name])));

  it("has every argument with its words, as a block of cells, optional where it may be left out", () =>
    expect(made.functions.map((f) => f.parameters)).toEqual(
      catalogue.map((contract) =>
        parameters(contract).map(([name, arg]) => ({
          name,
          description: argumentWords(arg).replace(/\s+/g, " "),
          type: "any",
          dimensionality: "matrix",
          ...(arg.optional && { optional: true }),
        })),
      ),
    ));

  it("says what each answers and leads to its help", () => {
    expect(made.functions.map((f) => f.description)).toEqual(catalogue.map(functionWords));
    expect(made.functions.map((f) => f.helpUrl)).toEqual(catalogue.map(({ name }) => `${host}/help/${name.toLowerCase()}.html`));
  });

  it("lets errors in, and neither data types nor recalculation at every change", () => {
    expect(Object.keys(made).sort()).toEqual(["allowErrorForDataTypeAny", "functions"]);
    expect(made.allowErrorForDataTypeAny).toBe(true);
    for (const { options, result } of made.functions) {
      expect(options).toEqual({ requiresAddress: true });
      expect(result).toEqual({ dimensionality: "matrix" });
    }
  });
});

const share = quantity("share", "part */ of @it,\n in a comment", 0.1, [0, 1]);
const made = (name: Uppercase<string>) =>
  define({
    name,
    per: "piece",
    asks: "Which?",
    args: { share, other: optional(share, 0) },
    returns: cell(share),
    format: "0",
    equation: "{share}",
    source: "none",
    accuracy: "none",
    cautions: [],
    worked: { typed: [0.1], gives: 0.1 },
    run: ({ share }) => share,
  });

describe("functions.json", () => {
  it("keeps words that a comment would end at", async () => {
    const { functions } = await metadata([made("WHICH")], host);
    expect(functions[0].parameters[0].description).toBe("part * / of at it, in a comment (0 to 1; such as 0.1)");
    expect(functions[0].parameters[1].description).toContain("left out: 0");
  });

  it("fails on what the generator reports", () => expect(metadata([made("AB CD" as never)], host)).rejects.toThrow("functions.json: "));
  it("fails on a name that Excel would refuse", () =>
    expect(metadata([made("ECHO")], host)).rejects.toThrow("ECHO is a word of Excel 4's macro language"));
  it("fails on a host without https", () => expect(metadata([made("WHICH")], "http://club.example")).rejects.toThrow("not absolute https"));

  it.each([
    ["AB", "AB: a name begins with three letters or more"],
    ["A1", "A1: a name begins with three letters or more"],
    ["ABC1", "ABC1 reads as the address of a cell"],
    ["XFD1048576", "XFD1048576 reads as the address of a cell"],
    ["echo", "ECHO is a word of Excel 4's macro language"],
  ])("refuses the name %s", (name, words) => expect(nameTroubles([name])).toContain(words));
  it.each(["FILL", "XFE1", "ABC1048577", "DYETOPUP"])("takes the name %s", (name) => expect(nameTroubles([name])).toEqual([]));
  it("refuses a name that stands twice, in any case", () => expect(nameTroubles(["Fill", "FILL"])).toEqual(["FILL stands twice"]));

  it("sees a shape that would fail in Excel only", () => {
    const contract = made("WHICH");
    const parameter = { name: "share", type: "any", dimensionality: "matrix" };
    const sound = { id: "WHICH", name: "WHICH", helpUrl: host, result: { dimensionality: "matrix" } };
    const troubles = (change: object) =>
      functionTroubles([{ ...sound, parameters: [parameter, { ...parameter, name: "other" }], ...change }], [contract]);
    expect(troubles({})).toEqual([]);
    expect(troubles({ id: "WITCH" })).toEqual(["WHICH is missing"]);
    expect(troubles({ parameters: [parameter] })).toEqual(["WHICH takes share where share,other is due"]);
    expect(
      troubles({
        parameters: [
          { ...parameter, dimensionality: "scalar" },
          { ...parameter, name: "other" },
        ],
      }),
    ).toEqual(["WHICH: share is not a block of cells"]);
    expect(troubles({ result: {} })).toEqual(["WHICH does not give a block of cells"]);
    expect(troubles({ helpUrl: "help/which" })).toEqual(["WHICH: the help address help/which is not absolute https"]);
  });
});

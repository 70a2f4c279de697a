import { type Content, fromKept, toKeep } from "../../../../sheet/page/kept/work";

const content: Content = {
  book: { sheets: [{ id: "a", name: "A", cells: { A1: "1" } }], version: "19.3.2" },
  documents: { "urn:a": "<a/>" },
  print: { a: { elements: ["<pageSetup/>"], fits: true, names: {} } },
  shown: "a",
};

describe("a kept record", () => {
  it("gives the workbook back as it was", () => expect(fromKept(toKeep(content))).toEqual({ state: "read", content }));

  it("of a newer page is told from a damaged one", () => {
    expect(fromKept({ ...toKeep(content), form: 2 })).toEqual({ state: "newer" });
    expect(fromKept({ form: 7 })).toEqual({ state: "newer" });
  });

  it.each([
    ["nothing", undefined],
    ["a text", "book"],
    ["no form", content],
    ["no sheets", { ...toKeep(content), book: {} }],
    ["not one sheet", { ...toKeep(content), book: { sheets: [] } }],
    ["a sheet without a name", { ...toKeep(content), book: { sheets: [{ id: "a" }] } }],
    ["documents that are no texts", { ...toKeep(content), documents: { a: 1 } }],
  ])("with %s is damaged", (_, record) => expect(fromKept(record)).toEqual({ state: "damaged" }));
});

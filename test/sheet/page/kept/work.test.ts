import { type Content, cellsOnly, fromKept, toKeep } from "../../../../sheet/page/kept/work";

const content: Content = {
  book: { sheets: [{ id: "a", name: "A", cells: { A1: "1" } }], version: "19.3.2" },
  documents: { "urn:a": "<a/>" },
  print: { a: { elements: ["<pageSetup/>"], fits: true, names: {} } },
  shown: "a",
};

describe("a kept record", () => {
  it("gives the workbook back as it was", () => expect(fromKept(toKeep(content))).toEqual({ state: "read", content }));

  it("names the file that it rests on, and does not hold it", () => {
    const kept = toKeep({ ...content, file: Uint8Array.of(1, 2) }, "d1");
    expect(kept).toMatchObject({ file: "d1" });
    expect(fromKept(kept)).toEqual({ state: "read", content, file: "d1" });
  });

  it("of the form before opens still", () => expect(fromKept({ form: 1, ...content })).toEqual({ state: "read", content }));

  it("that has what stands beside by sheets first has it by pieces now", () => {
    const sheets = { a: { notes: [{ key: "note 0", author: "", text: "glue" }], links: [] }, b: { notes: [], links: [] } };
    expect(fromKept({ form: 2, ...content, sheets })).toEqual({
      state: "read",
      content: { ...content, notes: { a: sheets.a.notes, b: [] }, links: { a: [], b: [] } },
    });
  });

  it("loses no name, whatever it is", () => {
    const book = { ...content.book, namedRanges: JSON.parse('{"__proto__":"A!A1","constructor":"A!A2"}') };
    const read = fromKept(structuredClone(toKeep({ ...content, book })));
    expect(read.state === "read" && Object.entries((read.content.book as typeof book).namedRanges)).toEqual(
      Object.entries(book.namedRanges),
    );
  });

  it("has its cells taken out for an engine that fails on the rest", () =>
    expect(cellsOnly({ ...content, book: { ...content.book, styles: { 1: {} } } }).book).toEqual({
      version: "19.3.2",
      sheets: [{ id: "a", name: "A", cells: { A1: "1" } }],
    }));

  it("of a newer page is told from a damaged one", () => {
    expect(fromKept({ ...toKeep(content), form: 4 })).toEqual({ state: "newer" });
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

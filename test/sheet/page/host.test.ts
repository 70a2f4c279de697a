import type { Ended } from "../../../shared/host";
import { model } from "../../../sheet/engine";
import { pageHost } from "../../../sheet/page/host";
import { addresses } from "../addresses";
import { hundred } from "../hundred";

// The engine times every change on the console.
jest.spyOn(console, "debug").mockImplementation();

const whole = { insert: jest.fn(), open: jest.fn(), copyWithValues: jest.fn() };

function setUp(readOnly = false) {
  const book = model(hundred());
  const documents = new Map<string, string>();
  const host = pageHost(
    {
      model: book,
      readOnly,
      document: (namespace) => documents.get(namespace),
      setDocument: (namespace, xml) => void documents.set(namespace, xml),
      watch(changed) {
        const owner = {};
        book.on("update", owner, changed);
        return () => book.off("update", owner);
      },
      replaced: () => () => undefined,
    },
    whole,
  );
  const go = (address: string) => {
    const { col, row } = addresses(address);
    book.selection.selectCell(col, row);
  };
  const at = (address: string, sheetId = "blanks") => book.getters.getEvaluatedCell({ sheetId, ...addresses(address) });
  return { book, host, go, at };
}

const look = { formats: ["0.00"], rows: 1 };

describe("the embedded sheet as the pane sees it", () => {
  it("tells the selected cell, and for a spilled one the formula that fills it and its call", async () => {
    const { host, go } = setUp();
    go("J24");
    const selection = await host.selection();
    expect(selection).toMatchObject({ address: "Blanks!J24", formula: "=PORE.MOISTURE(H8:H127,I8:I127)", row: 16, column: 0 });
    const [call] = selection!.calls!;
    expect(call.name).toBe("MOISTURE");
    expect(call.answer[16][0]).toMatchObject({ error: "#VALUE!" });
  });

  it("tells no call where there is no formula", async () => {
    const { host, go } = setUp();
    go("H8");
    expect(await host.selection()).toMatchObject({ address: "Blanks!H8", formula: "", calls: undefined });
  });

  it("tells of another cell as if it were selected, and nothing of what is no cell", async () => {
    const { host, go } = setUp();
    go("H8");
    expect(await host.selection("Blanks!J24")).toMatchObject({ address: "Blanks!J24", row: 16, calls: [{ name: "MOISTURE" }] });
    expect(await host.selection("Nowhere!A1")).toBeUndefined();
  });

  it("tells changes of selection and of the selected cell, until told to stop", () => {
    const { book, host, go } = setUp();
    const changed = jest.fn();
    const stop = host.watch(changed);
    go("J9");
    expect(changed).toHaveBeenCalledTimes(1);
    book.dispatch("UPDATE_CELL", { sheetId: "blanks", ...addresses("H9"), content: "30" });
    expect(changed).toHaveBeenCalledTimes(2);
    book.dispatch("UPDATE_CELL", { sheetId: "blanks", ...addresses("P40"), content: "1" });
    expect(changed).toHaveBeenCalledTimes(2);
    stop();
    go("J10");
    expect(changed).toHaveBeenCalledTimes(2);
  });

  it("reads ranges and names, blanks as blanks, and nothing where there is none", async () => {
    const { host } = setUp();
    expect(await host.read("A8:C8")).toEqual([["P-001", "boxelder", "spalted"]]);
    expect((await host.read("MyShop"))![0]).toEqual(["setting", "here"]);
    expect(await host.read("P40")).toEqual([[null]]);
    expect(await host.read("Nowhere!A1")).toBeUndefined();
    expect(await host.read("no name")).toBeUndefined();
    expect(await host.read("A1:ZZ9999")).toBeUndefined();
  });

  it("writes a formula into a blank cell, over a filled one only when told to", async () => {
    const { host, go, at } = setUp();
    go("P9");
    expect(await host.write("=PORE.FILL(6,5,104)", look, false)).toEqual({ done: true });
    expect(at("P9").formattedValue).toBe("1.14");
    expect(await host.write("=PORE.DYE(2)", look, false)).toMatchObject({ done: false, filled: true });
    expect(await host.write("=PORE.DYE(2)", look, true)).toEqual({ done: true });
    expect(at("P9").value).toBe(0.5);
  });

  it("writes no answer that would run into filled cells or off the sheet", async () => {
    const { host, go } = setUp();
    go("O8");
    expect(await host.write("=PORE.VOIDS(K8:K20)", { formats: ["0", "0"], rows: 3 }, false)).toEqual({ done: true });
    go("O7");
    const answer = await host.write("=PORE.VOIDS(K8:K20)", { formats: ["0"], rows: 5 }, false);
    expect(answer).toMatchObject({ done: false, words: expect.stringContaining("O8 is not empty: clear it, or choose a cell with room") });
    go("P9");
    expect(await host.write("=1", { formats: ["0"], rows: 5000 }, false)).toMatchObject({ done: false });
  });

  it("keeps documents by their namespace", async () => {
    const { host } = setUp();
    expect(await host.readPart("urn:a")).toBeUndefined();
    expect(await host.writePart("urn:a", "<a/>")).toEqual({ done: true });
    expect(await host.readPart("urn:a")).toBe("<a/>");
  });

  it("prints rows of text on a new sheet, never as formulas, under a name that is free", async () => {
    const { book, host, at } = setUp();
    await host.printSheet("Safety list", [
      ["Ready?", "yes"],
      ["=1+1", "many words ".repeat(10)],
      ["Oven, whatever it is called", ""],
    ]);
    const [sheet] = book.getters.getSheetIds().slice(-1);
    const styleOf = (row: number) => book.getters.getCell({ sheetId: sheet, col: 0, row })?.style;
    expect([0, 1, 2].map((col) => book.getters.getColSize(sheet, col))).toEqual([68, 425, 425]);
    expect([0, 1, 2].map((row) => book.getters.getRowSize(sheet, row))).toEqual([23, 40, 23]);
    expect([0, 1, 2].map(styleOf)).toEqual([
      { bold: true, wrapping: "wrap", verticalAlign: "top" },
      { wrapping: "wrap", verticalAlign: "top" },
      { bold: true, verticalAlign: "top" },
    ]);
    expect(book.getters.getActiveSheetId()).toBe(sheet);
    expect(at("B1", sheet).value).toBe("yes");
    expect(at("A2", sheet).value).toBe("=1+1");
    await new Promise((done) => setTimeout(done, 2));
    await host.printSheet("Safety list", [["again"]]);
    expect(book.getters.getSheetIds().map((id) => book.getters.getSheetName(id))).toEqual([
      "Blanks",
      "My Shop",
      "Safety list",
      "Safety list 2",
    ]);
  });

  it("changes nothing while another tab has the workbook, and says why", async () => {
    const { host, go, at } = setUp(true);
    go("P9");
    const work = { progress: jest.fn(), stop: new AbortController().signal };
    const answers: Ended[] = [
      await host.write("=PORE.DYE(2)", look, true),
      await host.writePart("urn:a", "<a/>"),
      await host.printSheet("Safety list", [["again"]]),
      await host.insert(new Uint8Array(), ["Today"], work),
    ];
    for (const answer of answers) expect(answer).toMatchObject({ done: false, words: expect.stringContaining("open in another tab") });
    expect(at("P9").type).toBe("empty");
    expect(await host.readPart("urn:a")).toBeUndefined();
    expect(whole.insert).not.toHaveBeenCalled();
  });
});

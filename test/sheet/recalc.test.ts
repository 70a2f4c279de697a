import { existsSync, linkSync, mkdtempSync, readdirSync, readFileSync, rmSync, truncateSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { read } from "@e965/xlsx";
import { zipSync } from "fflate";
import { recalculated } from "../../sheet/file/recalculated";
import { workbookFile } from "../built";
import { command } from "../command";
import { cellIn, f, row, textsOf, workbookOf } from "./file/workbooks";

jest.spyOn(console, "debug").mockImplementation();

const first = "xl/worksheets/sheet1.xml";

const recalc = command("sheet/recalc.ts");
const run = (...args: readonly string[]) => {
  const { status, stdout, stderr } = recalc(...args);
  return { code: status, said: status === 0 ? stdout : stderr };
};

describe("npm run recalc", () => {
  let folder: string;
  const at = (name: string) => join(folder, name);
  beforeAll(() => {
    folder = mkdtempSync(join(tmpdir(), "recalc-"));
  });
  afterAll(() => rmSync(folder, { recursive: true }));

  it("tells how many, how many with errors, and where", () => {
    const rows =
      row(1, f("A1", "_xldudf_PORE_PRICETAG(10,0.5)"), f("B1", "_xldudf_PORE_PRICETAG(10,2)"), f("C1", "BAHTTEXT(1)")) +
      row(2, '<c r="A2" cm="1"><f t="array" ref="A2:B2">_xldudf_PORE_SUITABILITY("boxelder",{9;8})</f></c>');
    const input = workbookOf({ sheets: { "June batch": rows } });
    writeFileSync(at("in.xlsx"), input);
    const { code, said } = run(at("in.xlsx"), "-o", at("out.xlsx"));
    expect(code).toBe(0);
    expect(said.split("\n")).toEqual([
      "3 PORE formulas, 1 with errors",
      "Errors of PORE formulas:",
      expect.stringMatching(/^ {2}June batch!B1: #VALUE! margin on the price/),
      "Larger than the cells they have:",
      expect.stringMatching(/^ {2}June batch!A2: it fills A2:B3/),
      "Left as it was:",
      "  June batch!C1: the engine does not know the function BAHTTEXT",
      "",
    ]);
    expect(Uint8Array.from(readFileSync(at("in.xlsx")))).toEqual(input);
    expect(cellIn(textsOf(readFileSync(at("out.xlsx")))[first], "A1")).toContain("<v>20</v>");
  });

  it("never writes over its input, by whatever name", () => {
    linkSync(at("in.xlsx"), at("same.xlsx"));
    for (const output of ["in.xlsx", "same.xlsx"])
      expect(run(at("in.xlsx"), "-o", at(output))).toEqual({ code: 2, said: expect.stringContaining("the output is the input") });
  });

  it("writes over another file only when told to", () => {
    const before = readFileSync(at("out.xlsx"));
    expect(run(at("in.xlsx"), "-o", at("out.xlsx"))).toEqual({ code: 2, said: expect.stringContaining("add --force") });
    expect(readFileSync(at("out.xlsx"))).toEqual(before);
    expect(run(at("in.xlsx"), "-o", at("out.xlsx"), "--force").code).toBe(0);
  });

  it("refuses a file of more than 100 MB unread", () => {
    writeFileSync(at("large.xlsx"), "PK");
    truncateSync(at("large.xlsx"), 100_000_001);
    expect(run(at("large.xlsx"), "-o", at("none.xlsx"))).toEqual({ code: 2, said: expect.stringContaining("larger than 100 MB") });
  });

  it.each([
    { what: "no workbook", bytes: Buffer.from("two quarts left"), words: "it is not a workbook" },
    { what: "a bomb", bytes: zipSync({ "bomb.xml": new Uint8Array(30_000_000) }), words: "200 times its size" },
  ])("answers $what with words, and with no output", ({ bytes, words }) => {
    writeFileSync(at("bad.xlsx"), bytes);
    const { code, said } = run(at("bad.xlsx"), "-o", at("none.xlsx"));
    expect(code).not.toBe(0);
    expect(said).toContain(words);
    expect(said.trim().split("\n")).toHaveLength(1);
    expect(existsSync(at("none.xlsx"))).toBe(false);
  });

  it("leaves nothing behind where it cannot write", () => {
    expect(run(at("in.xlsx"), "-o", at("nowhere/out.xlsx"))).toEqual({ code: 2, said: expect.stringContaining("cannot be written") });
    expect(readdirSync(folder).filter((name) => name.startsWith("."))).toEqual([]);
  });

  it.each([[], ["in.xlsx"], ["-o", "out.xlsx"], ["in.xlsx", "more.xlsx", "-o", "out.xlsx"], ["--what"]])(
    "says how it is used (%#)",
    (...args) => expect(run(...args)).toEqual({ code: 2, said: expect.stringContaining("npm run recalc -- in.xlsx -o out.xlsx") }),
  );

  it("finds nothing to change in the workbook that we hand out", () => {
    const before = workbookFile("live", "US", "demo");
    const { found, left, cut, otherErrors, file } = recalculated(before);
    expect(found).toBeGreaterThan(50);
    expect([left, cut, otherErrors]).toEqual([[], [], []]);
    const [own, again] = [read(before), read(file)];
    for (const name of own.SheetNames) expect([name, again.Sheets[name]]).toEqual([name, own.Sheets[name]]);
  });
});

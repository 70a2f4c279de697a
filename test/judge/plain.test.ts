import { mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { read, type WorkBook } from "@e965/xlsx";
import { strFromU8, strToU8, unzipSync, zipSync } from "fflate";
import { ofKey, rangeText, refTo } from "../../src/workbook/place";
import { template } from "../../src/workbook/sheets/template";
import { dash } from "../../src/workbook/shown";
import { workbookFile } from "../built";
import { needing } from "../needing";
import { convertAll } from "./libreoffice";

type Typed = string | number | undefined;
/** What is typed over, by sheet, label of the row and column. */
type Typing = readonly (readonly [sheet: string, label: string, column: number, typed: Typed])[];

const folder = mkdtempSync(join(tmpdir(), "plain-"));
const { sheets } = template("US", "demo").book;

function rowOf(sheet: string, label: string): number {
  const { cells } = sheets.find(({ name }) => name === sheet)!;
  const found = [...cells].find(([at, { value }]) => value === label && at.endsWith(",0"));
  if (!found) throw new Error(`no row of ${sheet} is called ${label}`);
  return ofKey(found[0])[0];
}

const at = (sheet: string, label: string, column: number): string => rangeText(refTo(sheet, rowOf(sheet, label), column));

/** The file as a person without the functions leaves it: other values in cells, formulas as they are. */
function retyped(file: Uint8Array, typing: Typing): Uint8Array {
  const parts = unzipSync(file);
  for (const [sheet, label, column, typed] of typing) {
    const part = `xl/worksheets/sheet${sheets.findIndex(({ name }) => name === sheet) + 1}.xml`;
    const address = at(sheet, label, column);
    const cell = new RegExp(`<c r="${address}"((?: s="\\d+")?)[^>]*?(?:/>|>.*?</c>)`, "s");
    const text = strFromU8(parts[part]);
    if (!cell.test(text)) throw new Error(`${sheet} has no cell ${address}`);
    const value = typed === undefined ? "" : `<v>${typed}</v>`;
    parts[part] = strToU8(text.replace(cell, `<c r="${address}"$1${typeof typed === "string" ? ' t="str"' : ""}>${value}</c>`));
  }
  return zipSync(parts);
}

const cases = {
  asItIs: [],
  thinLid: [["My Shop", "lid", 1, 0.3]],
  noMaterial: [["My Shop", "material", 1, undefined]],
  heavyPart: [["Blanks", "spalted boxelder", 7, undefined]],
  textWeight: [["Blanks", "spalted boxelder", 7, "21 g"]],
  halfway: [
    ["Today", "weight drained, not yet baked", 1, undefined],
    ["Today", "weight cured and cool", 1, undefined],
  ],
  overfull: [["Today", "weight drained, not yet baked", 1, 300]],
  halfLine: [["Price Tag", "resin", 1, undefined]],
  strong: [
    ["My Shop", "resin on hand", 1, 0.5],
    ["My Shop", "resin mixed on", 1, 46140],
    ["My Shop", "resin dye rate", 1, 5],
  ],
  topUp: [
    ["My Shop", "resin on hand", 1, 0.5],
    ["My Shop", "resin mixed on", 1, 46140],
  ],
  undated: [
    ["My Shop", "resin on hand", 1, 2],
    ["My Shop", "resin mixed on", 1, undefined],
  ],
  hectopascal: [
    ["My Shop", "barometer", 1, 1013],
    ["My Shop", "lid", 1, undefined],
  ],
  badPump: [["My Shop", "pump end pressure", 1, 40]],
} as const satisfies Record<string, Typing>;

needing("spreadsheet")("the plain edition, typed into without the functions and recalculated by LibreOffice", () => {
  const books = {} as Record<keyof typeof cases, WorkBook>;
  beforeAll(() => {
    const plain = workbookFile("plain", "US", "demo");
    const names = Object.keys(cases) as (keyof typeof cases)[];
    const files = names.map((name) => join(folder, `${name}.xlsx`));
    for (const [i, name] of names.entries()) writeFileSync(files[i], retyped(plain, cases[name]));
    const theirs = join(folder, "theirs");
    mkdirSync(theirs);
    convertAll(files, "xlsx", theirs).forEach((file, i) => {
      books[names[i]] = read(readFileSync(file));
    });
  });
  afterAll(() => rmSync(folder, { recursive: true, force: true }));

  const shows = (name: keyof typeof cases, sheet: string, label: string, column = 1) =>
    books[name].Sheets[sheet][at(sheet, label, column)]?.v ?? "";

  it("screens the lid that stands there now", () => {
    expect(shows("asItIs", "My Shop", "lid check")).toBe("not ruled out (this is no approval)");
    expect(shows("thinLid", "My Shop", "lid check")).toBe("do not pump: too weak");
    expect(shows("thinLid", "Today", "gauge to go to")).toBe("");
    expect(shows("noMaterial", "My Shop", "lid check")).toBe("do not pump: choose what it is made of");
  });

  it.each(["heavyPart", "textWeight"] as const)("takes no blank or word for a weight of nought: %s", (name) => {
    expect(shows(name, "Blanks", "spalted boxelder", 12)).toBe(dash);
    expect(shows(name, "Blanks", "spalted boxelder", 15)).toBe(dash);
    expect(shows(name, "Blanks", "spalted boxelder", 18)).toMatch(/weight/);
    expect(shows(name, "Blanks", "left out, rows")).toBe(shows("asItIs", "Blanks", "left out, rows") + 1);
  });

  it("waits for the weights of the run, and refuses those that cannot be", () => {
    expect(shows("asItIs", "Today", "fullness of the pores")).toBeGreaterThan(0.5);
    for (const label of ["weight gain", "fullness of the pores", "lost in the oven"]) expect(shows("halfway", "Today", label)).toBe("");
    expect(shows("overfull", "Today", "fullness of the pores")).toBe(dash);
  });

  it("adds up no line that is half there", () => expect(shows("halfLine", "Price Tag", "total")).toBe(dash));

  it("mixes, measures and dyes by what is on hand now", () => {
    expect(shows("topUp", "Today", "mix")).toBe(1);
    expect(shows("topUp", "Today", "packets of catalyst")).toBe(1);
    expect(shows("topUp", "Today", "dye in spoons")).toMatch(/tsp/);
    expect(shows("strong", "Today", "dye")).toBe(dash);
    expect(shows("strong", "Today", "dye", 6)).toMatch(/^too strong/);
  });

  it("gives resin without a date no day to be used by", () => {
    expect(shows("undated", "Today", "use it all by")).toBe("");
    expect(shows("undated", "Today", "oldest part mixed on", 6)).toBe("");
    expect(shows("undated", "Today", "mix", 6)).toBe("");
    expect(books.undated.Sheets.Today.A2.v).toMatch(/the resin on hand has no date/);
  });

  it.each(["hectopascal", "badPump"] as const)("sends to My Shop where a setting cannot be: %s", (name) => {
    const lead = (sheet: string) => books[name].Sheets[sheet].A2.v;
    for (const sheet of ["Blanks", "Today", "Loads", "Supplies"]) expect([sheet, lead(sheet)]).toEqual([sheet, lead("My Shop")]);
    expect(lead("My Shop")).toMatch(/^“.+” on My Shop is wrong or missing: type /);
  });

  it("shows no error code in any of them", () => {
    const codes = Object.entries(books).flatMap(([name, { Sheets }]) =>
      Object.entries(Sheets).flatMap(([sheet, cells]) =>
        Object.entries(cells).flatMap(([at, cell]) => (cell?.t === "e" ? [`${name}: ${sheet}!${at} ${cell.w}`] : [])),
      ),
    );
    expect(codes).toEqual([]);
  });
});

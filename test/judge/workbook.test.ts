import { execFileSync } from "node:child_process";
import { mkdtempSync, readdirSync, readFileSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { basename, join } from "node:path";
import { read, utils, type WorkBook } from "@e965/xlsx";
import { strFromU8, unzipSync } from "fflate";
import { isFault, type Outcome } from "../../shared/outcome";
import { fresh } from "../../src/checklist/list";
import { write } from "../../src/checklist/part";
import { folder } from "../../src/workbook/choice";
import { ofKey } from "../../src/workbook/place";
import { template } from "../../src/workbook/sheets/template";
import { dash, shownCells } from "../../src/workbook/shown";
import { dist } from "../../tool/fresh";
import { findProgram } from "../../tool/programs";
import { recalculated } from "../../tool/recalculated";
import { fileName, workbooks } from "../../tool/workbook";
import { needing } from "../needing";
import { convertAll } from "./libreoffice";

const sheetNames = [
  ...["Start", "My Shop", "Blanks", "Today", "Loads", "Price Tag", "Resin Book", "Supplies", "Run Log"],
  ...["Safety", "Labels", "Handout", "Self-check", "Woods"],
];

/** A plan and a log grow; the rest is kept to what a person would print. */
/** At nine points or more; wide tables go over two pages side by side. */
const mostPages = {
  ...{ Start: 2, "My Shop": 1, Blanks: 3, Today: 5, Loads: 3, "Price Tag": 1, "Resin Book": 2, Supplies: 2 },
  ...{ "Run Log": 3, Safety: 1, Handout: 1, "Self-check": 1, Woods: 3 },
};

const books = [
  { system: "US", filled: "demo" },
  { system: "US", filled: "empty" },
  { system: "SI", filled: "demo" },
  { system: "SI", filled: "empty" },
] as const;

const made = join(dist, folder);
const names = readdirSync(made);
const opened = (path: string): WorkBook => read(readFileSync(path), { cellFormula: true, cellNF: true });

const cellsOf = (book: WorkBook) =>
  book.SheetNames.flatMap((sheet) =>
    Object.entries(book.Sheets[sheet])
      .filter(([at]) => !at.startsWith("!"))
      .map(([at, cell]) => ({ sheet, at, cell })),
  );

describe("a second reader", () => {
  it("opens all eight files, with their sheets in order", () => {
    expect(names).toHaveLength(8);
    for (const name of names) expect(opened(join(made, name)).SheetNames).toEqual(sheetNames);
  });

  it.each(books)("finds every formula of $system $filled with the value it had", ({ system, filled }) => {
    for (const edition of ["live", "plain"] as const) {
      const formulas = cellsOf(opened(join(made, fileName(edition, system, filled)))).filter(({ cell }) => cell.f);
      expect(formulas.length).toBeGreaterThan(edition === "live" ? 500 : 900);
      expect(formulas.filter(({ cell }) => cell.v === undefined)).toEqual([]);
      expect(formulas.some(({ cell }) => cell.f.includes("_xldudf_PORE_"))).toBe(edition === "live");
    }
  });

  it("finds errors only in the rows of the demo that hold a slip, and none in an empty book", () => {
    for (const system of ["US", "SI"] as const) {
      const errors = (filled: "demo" | "empty", edition: "live" | "plain") =>
        cellsOf(opened(join(made, fileName(edition, system, filled)))).filter(({ cell }) => cell.t === "e");
      expect(new Set(errors("demo", "live").map(({ sheet }) => sheet))).toEqual(new Set(["Blanks"]));
      expect(errors("demo", "plain")).toEqual([]);
      expect(errors("empty", "live")).toEqual([]);
      expect(errors("empty", "plain")).toEqual([]);
    }
  });
});

describe("the package", () => {
  it.each(books)("$system $filled carries the checklist, and asks no program to calculate on opening", ({ system, filled }) => {
    for (const edition of ["live", "plain"] as const) {
      const parts = unzipSync(readFileSync(join(made, fileName(edition, system, filled))));
      expect(strFromU8(parts["customXml/item1.xml"])).toBe(write(fresh));
      expect(strFromU8(parts["xl/_rels/workbook.xml.rels"])).toContain("../customXml/item1.xml");
      const book = strFromU8(parts["xl/workbook.xml"]);
      expect(book).not.toContain("fullCalcOnLoad");
      for (const [, range] of book.matchAll(/<definedName [^>]*>([^<]*)</g)) expect(range).toMatch(/^(\w+|'[^']+')!\$/);
    }
  });

  it("is the same, byte for byte, whenever it is made", async () => {
    const again = await workbooks("US", "demo");
    for (const [edition, file] of again)
      expect(Buffer.compare(Buffer.from(file), readFileSync(join(made, fileName(edition, "US", "demo"))))).toBe(0);
  });
});

/** As a formula must spell quotes inside a text. */
const curled = (text: string) => text.replace(/"([^"]*)"/g, "“$1”");

function agree(ours: Outcome | undefined, cell: { v?: unknown } | undefined): boolean {
  const other = cell?.v ?? "";
  if (isFault(ours)) return other === ours.message || other === curled(ours.message) || other === dash;
  if (typeof ours !== "number" || typeof other !== "number") return (ours ?? "") === other;
  return Math.abs(ours - other) <= 1e-6 * Math.abs(ours) || Math.abs(ours - other) < 1e-12;
}

needing("spreadsheet")("LibreOffice", () => {
  const theirs = mkdtempSync(join(tmpdir(), "workbooks-"));
  const files = names.map((name) => join(made, name));
  beforeAll(() => void convertAll(files, "xlsx", theirs), 120_000);
  afterAll(() => rmSync(theirs, { recursive: true, force: true }));

  it("opens all eight files and keeps their sheets and formulas", () => {
    for (const name of names) {
      const [before, after] = [opened(join(made, name)), opened(join(theirs, name))];
      expect(after.SheetNames).toEqual(sheetNames);
      const formulas = (book: WorkBook) =>
        cellsOf(book)
          .filter(({ cell }) => cell.f)
          .map(({ sheet, at }) => `${sheet} ${at}`);
      const found = new Set(formulas(after));
      expect(formulas(before).filter((at) => !found.has(at))).toEqual([]);
    }
  });

  it.each(books)("recalculates the plain edition of $system $filled to the live one's values, cell by cell", ({ system, filled }) => {
    const whole = template(system, filled);
    const cached = recalculated(whole);
    const live = opened(join(made, fileName("live", system, filled)));
    const plain = opened(join(theirs, fileName("plain", system, filled)));
    const differences: string[] = [];
    let compared = 0;
    for (const sheet of whole.book.sheets)
      for (const at of shownCells(sheet, whole.live(), cached).keys()) {
        const [r, c] = ofKey(at);
        const address = utils.encode_cell({ r, c });
        const ours = cached.value(sheet.name, r, c);
        // What the file keeps is what was calculated; an error stands in it by its code alone.
        const kept = live.Sheets[sheet.name][address];
        if (isFault(ours) ? kept?.w !== ours.error : !agree(ours, kept)) differences.push(`${sheet.name} ${address}: kept ${kept?.v}`);
        const other = plain.Sheets[sheet.name][address];
        // Some words are of the edition without the add-in alone.
        const alone = sheet.cells.get(at)?.without;
        if (!agree(typeof alone === "string" ? alone : ours, other))
          differences.push(`${sheet.name} ${address}: ${JSON.stringify(ours)}, and LibreOffice has ${other?.v}`);
        compared++;
      }
    expect(differences).toEqual([]);
    expect(compared).toBeGreaterThan(4000);
  });

  needing("paper")("prints", () => {
    const plain = files.filter((file) => file.includes("plain"));
    let pdfs: string[];
    beforeAll(() => {
      pdfs = convertAll(plain, "pdf", theirs);
    });

    it.each(plain.map((file) => basename(file)))("%s with nothing too wide for its cell, on few pages, the handout on one", (name) => {
      const pdf = pdfs[plain.findIndex((file) => file.endsWith(name))];
      const pages = execFileSync(findProgram("paper")!, ["-layout", pdf, "-"], { encoding: "utf8", maxBuffer: 1e8 })
        .split("\f")
        .slice(0, -1);
      expect(pages.join("\n")).not.toMatch(/##|#NAME|Err:/);
      const sheetOf = pages.map((page) => /Porewise: (.+?)\s{2,}Page/.exec(page)?.[1]);
      // The empty list has rows of two lines, and more of them.
      const limits = name.includes("empty") ? { ...mostPages, Blanks: 4 } : mostPages;
      for (const [sheet, most] of Object.entries(limits)) expect(sheetOf.filter((one) => one === sheet).length).toBeLessThanOrEqual(most);
      // Labels have no foot: every bit of their sheet is a label.
      expect([...new Set(sheetOf)].filter(Boolean)).toEqual(sheetNames.filter((name) => name !== "Labels"));
    });
  });
});

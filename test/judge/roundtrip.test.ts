import "../sheet/file/dom";
import { mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { read, type WorkBook } from "@e965/xlsx";
import * as engine from "@odoo/o-spreadsheet";
import { model } from "../../sheet/engine";
import { type Opened, opened } from "../../sheet/file/open";
import { saved } from "../../sheet/file/save";
import { fileName } from "../../tool/workbook";
import { workbookFile } from "../built";
import { needing } from "../needing";
import { addresses } from "../sheet/addresses";
import { textsOf } from "../sheet/file/workbooks";
import { convertAll } from "./libreoffice";
import { schemaErrors } from "./schemaerrors";
import { seen } from "./secondreader";

for (const name of ["debug", "group", "groupEnd"] as const) jest.spyOn(console, name).mockImplementation();

const books = [
  { edition: "live", system: "US", filled: "demo" },
  { edition: "live", system: "SI", filled: "demo" },
  { edition: "plain", system: "US", filled: "demo" },
  { edition: "live", system: "US", filled: "empty" },
] as const;

interface Trip {
  readonly first: Uint8Array;
  readonly workbook: Opened;
  readonly page: engine.Model;
  readonly second: Uint8Array;
}

const trips = new Map<string, Trip>();
const trip = (edition: string, system = "US", filled = "demo"): Trip => trips.get(`${edition} ${system} ${filled}`)!;

beforeAll(async () => {
  for (const { edition, system, filled } of books) {
    const first = workbookFile(edition, system, filled);
    const workbook = opened(first, engine);
    const page = model(workbook.book);
    trips.set(`${edition} ${system} ${filled}`, { first, workbook, page, second: await saved(page, workbook, engine) });
  }
});

/** What a person sees of every cell. */
const shownIn = ({ getters }: engine.Model) =>
  getters.getSheetIds().flatMap((id) =>
    getters.getEvaluatedCellsPositions(id).map((position) => {
      const { value, formattedValue } = getters.getEvaluatedCell(position);
      return `${getters.getSheetName(id)} ${position.row} ${position.col}: ${value} ${formattedValue}`;
    }),
  );

describe("the template on its way through the page", () => {
  it.each(books)("loses nothing that its file held: $edition, $system, $filled", ({ edition, system, filled }) => {
    const { first, workbook, second } = trip(edition, system, filled);
    expect([workbook.lost, workbook.unknown]).toEqual([[], []]);
    expect(seen(second)).toEqual(seen(first));
  });

  it.each(books)("shows the same when it opens again: $edition, $system, $filled", ({ edition, system, filled }) => {
    const { page, second } = trip(edition, system, filled);
    const again = opened(second, engine);
    expect(again.lost).toEqual([]);
    const seen = shownIn(page);
    expect(seen.length).toBeGreaterThan(2000);
    expect(shownIn(model(again.book))).toEqual(seen);
  });

  it("is the same after the page was left and opened anew", async () => {
    const { workbook, page, second } = trip("live");
    const kept = structuredClone(workbook);
    const later = model(JSON.parse(JSON.stringify(page.exportData())));
    expect(seen(await saved(later, kept, engine))).toEqual(seen(second));
  });

  it.each(books)("with one cell changed holds that and all else: $edition, $system, $filled", async ({ edition, system, filled }) => {
    const { first } = trip(edition, system, filled);
    const workbook = opened(first, engine);
    const page = model(workbook.book);
    const [sheetId] = page.getters.getSheetIds();
    page.dispatch("UPDATE_CELL", { sheetId, ...addresses("K3"), content: "42" });
    const [before, after] = [seen(first), seen(await saved(page, workbook, engine))];
    expect(after.cells.Start.K3).toMatchObject({ t: "n", v: 42 });
    const { K3: _, ...others } = after.cells.Start;
    expect({ ...after, cells: { ...after.cells, Start: others } }).toEqual(before);
  });

  it("is the same after a second time", async () => {
    const again = opened(trip("live").second, engine);
    expect(seen(await saved(model(again.book), again, engine))).toEqual(seen(trip("live").first));
  });

  it("tells the checklist, its title and its maker byte for byte", () => {
    const [before, after] = [textsOf(trip("live").first), textsOf(trip("live").second)];
    expect(after["customXml/item1.xml"]).toBe(before["customXml/item1.xml"]);
    expect(after["docProps/core.xml"]).toBe(before["docProps/core.xml"]);
    expect(after["xl/theme/theme1.xml"]).toBe(before["xl/theme/theme1.xml"]);
  });
});

const cellsOf = (book: WorkBook) =>
  book.SheetNames.flatMap((sheet) =>
    Object.entries(book.Sheets[sheet])
      .filter(([at]) => !at.startsWith("!"))
      .map(([at, cell]) => ({ place: `${sheet} ${at}`, ...cell })),
  );

it("is saved as the Open XML schemas want it", () => {
  const errors = schemaErrors(Object.fromEntries([...trips].map(([name, { second }]) => [name, second])));
  for (const name of trips.keys()) expect([name, errors[name]]).toEqual([name, []]);
});

describe("a second reader", () => {
  it.each(books)("finds every formula and value that it found before: $edition, $system, $filled", ({ edition, system, filled }) => {
    const [before, after] = [trip(edition, system, filled).first, trip(edition, system, filled).second].map((file) =>
      cellsOf(read(file, { cellFormula: true }))
        .filter(({ f, v }) => f || (v !== undefined && v !== ""))
        .map(({ place, f, t }) => `${place} ${f ? "formula" : "value"} ${t}`)
        .sort(),
    );
    expect(after).toEqual(before);
  });
});

const close = (a: unknown, b: unknown): boolean =>
  typeof a === "number" && typeof b === "number"
    ? Math.abs(a - b) <= 1e-6 * Math.abs(a) || Math.abs(a - b) < 1e-12
    : (a ?? "") === (b ?? "");

needing("spreadsheet")("LibreOffice", () => {
  const folder = mkdtempSync(join(tmpdir(), "roundtrip-"));
  const at = (...names: string[]) => join(folder, ...names);
  const name = (edition: "live" | "plain") => fileName(edition, "US", "demo");

  beforeAll(() => {
    for (const one of ["anew", "kept"]) mkdirSync(at(one));
    for (const edition of ["live", "plain"] as const) writeFileSync(at(name(edition)), trip(edition).second);
    writeFileSync(at("first.xlsx"), trip("live").first);
    convertAll([at(name("plain"))], "xlsx", at("anew"));
    convertAll([at(name("live")), at("first.xlsx")], "xlsx", at("kept"), true);
  });
  afterAll(() => rmSync(folder, { recursive: true, force: true }));

  const differing = (ours: WorkBook, theirs: WorkBook) => {
    const values = new Map(cellsOf(theirs).map((cell) => [cell.place, cell.v]));
    const told = cellsOf(ours).filter(({ v }) => v !== undefined && v !== "");
    expect(told.length).toBeGreaterThan(1500);
    return told.filter(({ place, v }) => !close(v, values.get(place))).map(({ place, v }) => `${place}: ${v} is ${values.get(place)}`);
  };

  it("calculates the plain edition to the values that the template had", () =>
    expect(differing(read(trip("plain").first), read(readFileSync(at("anew", name("plain")))))).toEqual([]));

  // It knows no function of ours, and keeps the numbers that they gave, but neither words nor spills: of the template neither.
  it("shows of the live edition what it shows of the template", () =>
    expect(differing(read(readFileSync(at("kept", "first.xlsx"))), read(readFileSync(at("kept", name("live")))))).toEqual([]));

  it("keeps every number of the live edition that is no spill's", () => {
    const kept = new Map(cellsOf(read(readFileSync(at("kept", name("live"))))).map((cell) => [cell.place, cell.v]));
    const numbers = cellsOf(read(trip("live").first, { cellFormula: true })).filter(({ t, f, F }) => t === "n" && f && !F);
    expect(numbers.length).toBeGreaterThan(100);
    expect(numbers.filter(({ place, v }) => !close(v, kept.get(place))).map(({ place }) => place)).toEqual([]);
  });

  it.each(["live", "plain"] as const)("finds as many charts, lists, formats and notes in the %s edition as before", (edition) => {
    const counts = (file: Uint8Array) => {
      const parts = Object.entries(textsOf(file));
      const inSheets = (tag: string) =>
        parts.reduce((sum, [path, xml]) => sum + (/worksheets\/sheet/.test(path) ? xml.split(`<${tag} `).length - 1 : 0), 0);
      return {
        charts: parts.filter(([path]) => /charts\/chart\d+\.xml$/.test(path)).length,
        lists: inSheets("dataValidation"),
        formats: inSheets("cfRule"),
        merges: inSheets("mergeCell"),
        notes: parts.reduce((sum, [path, xml]) => sum + (/comments\d+\.xml$/.test(path) ? xml.split("<comment ").length - 1 : 0), 0),
      };
    };
    const folderOf = edition === "live" ? "kept" : "anew";
    expect(counts(readFileSync(at(folderOf, name(edition))))).toEqual(counts(trip(edition).second));
    expect(counts(trip(edition).second)).toEqual(counts(trip(edition).first));
  });
});

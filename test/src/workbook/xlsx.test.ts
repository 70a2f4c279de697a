import { write } from "@e965/xlsx";
import { strFromU8, strToU8, unzipSync } from "fflate";
import { fractions } from "../../../shared/numberformat";
import { rowsOf } from "../../../shared/xlsx/cells";
import { dynamicMark } from "../../../shared/xlsx/metadata";
import { callsOurs } from "../../../src/calls";
import { nothingCached } from "../../../src/workbook/cached";
import { template } from "../../../src/workbook/sheets/template";
import { xlsx } from "../../../src/workbook/xlsx";

jest.setTimeout(60_000);

/** Forms that Excel writes: MS-XLSX 2.3.8 for the mark of a dynamic array, ECMA-376-1 18.9 for the part that explains it. */
const made = template("US", "demo");
let parts: Record<string, string>;
beforeAll(async () => {
  const file = unzipSync(await xlsx(made.book, made.live(), nothingCached, made.paper));
  parts = Object.fromEntries(Object.entries(file).map(([path, bytes]) => [path, strFromU8(bytes)]));
});

const sheets = () => Object.entries(parts).filter(([path]) => /^xl\/worksheets\/sheet\d+\.xml$/.test(path));

it("holds every call of ours as an array formula with Excel's mark, and no other cell", () => {
  let calls = 0;
  for (const [path, xml] of sheets()) {
    for (const { address, formula } of rowsOf(xml, []).flatMap(({ cells }) => cells)) {
      const ours = formula && callsOurs(formula.text);
      const form = formula && { path, address, kind: formula.kind, dynamic: formula.dynamic };
      if (ours) expect(form).toEqual({ path, address, kind: "array", dynamic: true });
      else if (formula) expect(form).toEqual({ path, address, kind: "plain", dynamic: false });
      if (ours) calls++;
    }
    expect(xml).not.toMatch(/cm="(?!1")/);
  }
  expect(calls).toBeGreaterThan(100);
});

it("explains the mark, once", () => {
  const { "xl/metadata.xml": metadata, "[Content_Types].xml": types, "xl/_rels/workbook.xml.rels": relations } = parts;
  expect(metadata).toMatch(/<metadataType name="XLDAPR" minSupportedVersion="120000"[^>]* cellMeta="1"\/>/);
  expect(metadata).toMatch(
    /<ext uri="\{bdbb8cdc-fa1e-496e-a857-3c3f30c029c3\}"><xda:dynamicArrayProperties [^>]*fDynamic="1" fCollapsed="0"\/>/,
  );
  expect(metadata).toContain('<cellMetadata count="1"><bk><rc t="1" v="0"/></bk></cellMetadata>');
  expect(types).toContain(
    'PartName="/xl/metadata.xml" ContentType="application/vnd.openxmlformats-officedocument.spreadsheetml.sheetMetadata+xml"',
  );
  expect(relations.match(/relationships\/sheetMetadata" Target="metadata.xml"/g)).toHaveLength(1);
});

/** SheetJS writes the same form, learnt elsewhere. Where namespaces are declared is left out of it. */
it("is marked and explained as another writer does it, here and where a file is added to", () => {
  const sheet = { "!ref": "A1", A1: { t: "n", v: 1, f: "1+0", F: "A1", D: true } };
  const other = unzipSync(write({ SheetNames: ["One"], Sheets: { One: sheet } }, { type: "buffer", bookType: "xlsx" }));
  const bare = (xml: string) => xml.replace(/<\?.*?\?>|\s+xmlns(:\w+)?="[^"]*"|\s+(?=<|$)/g, "").replace(/>\s+/g, ">");
  const metadata = bare(strFromU8(other["xl/metadata.xml"]));
  expect(bare(parts["xl/metadata.xml"])).toBe(metadata);
  const added = new Map([
    ["xl/workbook.xml", strToU8("<workbook/>")],
    ["[Content_Types].xml", strToU8("<Types></Types>")],
  ]);
  expect(dynamicMark(added, "xl/workbook.xml")).toBe(1);
  expect(bare(strFromU8(added.get("xl/metadata.xml")!))).toBe(metadata);
  expect(strFromU8(other["xl/worksheets/sheet1.xml"])).toContain('<c r="A1" cm="1"><f t="array" ref="A1">1+0</f>');
});

it("names no writer and asks for no calculation", () => {
  expect(parts["docProps/app.xml"]).not.toContain("Application");
  expect(parts["docProps/core.xml"]).not.toMatch(/creator|lastModifiedBy/);
  expect(parts["xl/workbook.xml"]).toContain('<calcPr calcId="191029"/>');
});

it("writes sizes as fractions", () => {
  expect(parts["xl/styles.xml"]).toContain(`formatCode="${fractions}"`);
});

import { execFileSync } from "node:child_process";
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { strFromU8, strToU8, unzipSync, zipSync } from "fflate";
import { buildWorkbooks } from "../../tool/workbook";

/** The Open XML SDK's validator: the schemas of ECMA-376 as Office reads them, and rules that no schema can say. */
function errorsOf(files: readonly string[]): string[][] {
  const command = [join(__dirname, "openxml.mjs"), ...files];
  return JSON.parse(execFileSync(process.execPath, command, { encoding: "utf8", maxBuffer: 1e8 }));
}

/** A file with one of its parts changed. */
function broken(file: Uint8Array, part: string, change: (xml: string) => string): Uint8Array {
  const parts = unzipSync(file);
  const before = strFromU8(parts[part]);
  const after = change(before);
  if (after === before) throw new Error(`${part} was not changed`);
  return zipSync({ ...parts, [part]: strToU8(after) });
}

describe("the workbook's files under the Open XML schemas", () => {
  const folder = mkdtempSync(join(tmpdir(), "schema-"));
  let names: string[] = [];
  let found: string[][] = [];

  beforeAll(async () => {
    names = await buildWorkbooks(folder);
    const sound = readFileSync(join(folder, names[0]));
    const wrong = {
      "fonts.xlsx": broken(sound, "xl/styles.xml", (xml) => xml.replace(/(<sz [^>]*\/>)(<color [^>]*\/>)/, "$2$1")),
      "cell.xlsx": broken(sound, "xl/worksheets/sheet1.xml", (xml) => xml.replace('t="s"', 't="words"')),
    };
    for (const [name, file] of Object.entries(wrong)) writeFileSync(join(folder, name), file);
    found = errorsOf([...names, ...Object.keys(wrong)].map((name) => join(folder, name)));
  }, 180_000);
  afterAll(() => rmSync(folder, { recursive: true, force: true }));

  it("pass, all eight", () => {
    expect(names).toHaveLength(8);
    expect(Object.fromEntries(names.map((name, i) => [name, found[i]]))).toEqual(Object.fromEntries(names.map((name) => [name, []])));
  });

  it("do not pass with a font's parts out of order, or a cell of no known type", () => {
    expect(found[8]).toEqual([expect.stringMatching(/^\/xl\/styles.xml .*font.*sz/)]);
    expect(found[9].join()).toMatch(/sheet1.xml .*words/);
  });
});

import { readdirSync } from "node:fs";
import { join } from "node:path";
import { strFromU8, strToU8, unzipSync, zipSync } from "fflate";
import { folder } from "../../src/workbook/choice";
import { dist } from "../../tool/fresh";
import { built } from "../built";
import { schemaErrors } from "./schemaerrors";

/** A file with one of its parts changed. */
function broken(file: Uint8Array, part: string, change: (xml: string) => string): Uint8Array {
  const parts = unzipSync(file);
  const before = strFromU8(parts[part]);
  const after = change(before);
  if (after === before) throw new Error(`${part} was not changed`);
  return zipSync({ ...parts, [part]: strToU8(after) });
}

describe("the workbook's files under the Open XML schemas", () => {
  const names = readdirSync(join(dist, folder)).sort();
  let found: Record<string, string[]>;

  beforeAll(() => {
    const sound = built(`${folder}/${names[0]}`);
    found = schemaErrors({
      ...Object.fromEntries(names.map((name) => [name, built(`${folder}/${name}`)])),
      fonts: broken(sound, "xl/styles.xml", (xml) => xml.replace(/(<sz [^>]*\/>)(<color [^>]*\/>)/, "$2$1")),
      cell: broken(sound, "xl/worksheets/sheet1.xml", (xml) => xml.replace('t="s"', 't="words"')),
    });
  });

  it("pass, all eight", () => {
    expect(names).toHaveLength(8);
    for (const name of names) expect([name, found[name]]).toEqual([name, []]);
  });

  it("do not pass with a font's parts out of order, or a cell of no known type", () => {
    expect(found.fonts).toEqual([expect.stringMatching(/^\/xl\/styles.xml .*font.*sz/)]);
    expect(found.cell.join()).toMatch(/sheet1.xml .*words/);
  });
});

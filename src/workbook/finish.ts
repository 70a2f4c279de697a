import { strFromU8, strToU8, unzipSync, zipSync } from "fflate";

/** A part of the package beside the workbook's own: the checklist travels so. */
export interface Part {
  readonly path: string;
  readonly xml: string;
}

/** Files are the same wherever and whenever they are made. */
export const made = new Date("2026-01-01T00:00:00Z");

const customXml = "http://schemas.openxmlformats.org/officeDocument/2006/relationships/customXml";

/** A formula's value that is an error is typed as one, or it would be taken for text. */
const typedErrors = (xml: string): string =>
  xml.replace(/(<c [^>]*?)t="str"([^>]*>(?:<f[^>]*>[^<]*<\/f>)<v>#(?:VALUE!|N\/A|REF!|NAME\?|NUM!|NULL!|DIV\/0!)<\/v>)/g, '$1t="e"$2');

/** Programs without the functions must not be told to calculate on opening: they would lose every value. */
const calm = (xml: string): string => xml.replace(/ fullCalcOnLoad="1"/, "");

export function finished(file: Uint8Array, parts: readonly Part[]): Uint8Array {
  const all = unzipSync(file);
  const edit = (path: string, change: (xml: string) => string) => {
    all[path] = strToU8(change(strFromU8(all[path])));
  };
  edit("xl/workbook.xml", calm);
  for (const path of Object.keys(all)) if (/^xl\/worksheets\/[^/]+\.xml$/.test(path)) edit(path, typedErrors);
  parts.forEach(({ path, xml }, i) => {
    all[path] = strToU8(xml);
    const relation = `<Relationship Id="part${i + 1}" Type="${customXml}" Target="../${path}"/>`;
    edit("xl/_rels/workbook.xml.rels", (rels) => rels.replace("</Relationships>", `${relation}</Relationships>`));
  });
  const inOrder = Object.fromEntries(Object.keys(all).map((path) => [path, all[path]]));
  return zipSync(inOrder, { mtime: made, level: 9 });
}

import { strFromU8, strToU8, unzipSync, zipSync } from "fflate";
import { addressOf } from "../../shared/xlsx/address";

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

/** A font's parts have an order, and its colour comes after its size. */
const orderedFonts = (xml: string): string => xml.replace(/(<font>(?:(?!<\/font>).)*?)(<color [^>]*\/>)((?:<sz [^>]*\/>)?)/g, "$1$3$2");

/** A rule a block: some programs read no more than the first. */
const parted = (xml: string): string =>
  xml.replace(/(<conditionalFormatting [^>]*>)(.*?)<\/conditionalFormatting>/gs, (_, open: string, rules: string) =>
    (rules.match(/<cfRule .*?<\/cfRule>/gs) ?? []).map((rule) => `${open}${rule}</conditionalFormatting>`).join(""),
  );

/**
 * Programs without the functions must not be told to calculate on opening, or they lose every value. A number lower than Excel's
 * own tells it so too: this one is what Excel 2019 and later write.
 */
const calm = (xml: string): string => xml.replace(/<calcPr[^>]*\/>/, '<calcPr calcId="191029"/>');

/** Which library wrote the file is nothing to its reader. */
const unsigned = (xml: string): string =>
  xml.replace(/<Application>[^<]*<\/Application>/, "").replace(/<dc:creator>[^<]*<\/dc:creator>/, "");

/** Print areas and titles of sheets whose names are more than one word. */
const quotedSheets = (xml: string): string =>
  xml.replace(/(?<=<definedName name="_xlnm[^>]*>)[^<]*/g, (refs) => refs.replace(/(^|,)([^'!,]*[^\w'!,][^'!,]*)!/g, "$1'$2'!"));

type At = { readonly row: number; readonly column: number } | undefined;

/** The cell that is selected when a sheet is first shown. */
function withCursor(xml: string, at: At): string {
  if (!at) return xml;
  const cell = addressOf(at);
  const active = /activePane="(\w+)"/.exec(xml)?.[1];
  const selection = `<selection${active ? ` pane="${active}"` : ""} activeCell="${cell}" sqref="${cell}"/>`;
  return xml.replace(
    /(<sheetView [^>]*?)(?:\/>|>(.*?)<\/sheetView>)/s,
    (_, open, inner = "") => `${open}>${inner}${selection}</sheetView>`,
  );
}

export function finished(file: Uint8Array, parts: readonly Part[], cursors: readonly At[] = []): Uint8Array {
  const all = unzipSync(file);
  const edit = (path: string, change: (xml: string) => string) => {
    all[path] = strToU8(change(strFromU8(all[path])));
  };
  edit("xl/styles.xml", orderedFonts);
  edit("xl/workbook.xml", (xml) => quotedSheets(calm(xml)));
  for (const path of ["docProps/app.xml", "docProps/core.xml"]) if (all[path]) edit(path, unsigned);
  for (const path of Object.keys(all)) if (/^xl\/worksheets\/[^/]+\.xml$/.test(path)) edit(path, (xml) => parted(typedErrors(xml)));
  for (const [i, at] of cursors.entries()) edit(`xl/worksheets/sheet${i + 1}.xml`, (xml) => withCursor(xml, at));
  parts.forEach(({ path, xml }, i) => {
    all[path] = strToU8(xml);
    const relation = `<Relationship Id="part${i + 1}" Type="${customXml}" Target="../${path}"/>`;
    edit("xl/_rels/workbook.xml.rels", (rels) => rels.replace("</Relationships>", `${relation}</Relationships>`));
  });
  return zipSync(all, { mtime: made, level: 9 });
}

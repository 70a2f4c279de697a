import { strFromU8, strToU8, unzipSync, zipSync } from "fflate";
import { blockAt } from "../../shared/xlsx/address";
import { rowsOf } from "../../shared/xlsx/cells";
import { withEdits } from "../../shared/xlsx/edits";
import { dynamicMark } from "../../shared/xlsx/metadata";
import { callsOurs } from "../calls";

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

/** Programs without the functions must not be told to calculate on opening: they would lose every value. */
const calm = (xml: string): string => xml.replace(/ fullCalcOnLoad="1"/, "");

/** Print areas and titles of sheets whose names are more than one word. */
const quotedSheets = (xml: string): string => xml.replace(/(<definedName name="_xlnm[^>]*>)([^<'!]*[^\w<'!][^<'!]*)!/g, "$1'$2'!");

/** A call of ours stands in its cell as an array formula with a mark: without it a program takes it for one that gives one value. */
function storeCalls(all: Record<string, Uint8Array>): void {
  const parts = new Map(Object.entries(all));
  for (const [path, bytes] of parts) {
    if (!/^xl\/worksheets\/[^/]+\.xml$/.test(path)) continue;
    const xml = strFromU8(bytes);
    const rows = rowsOf(xml, []);
    const plain = rows.flatMap(({ cells }) => cells.filter(({ formula }) => formula?.kind === "plain" && callsOurs(formula.text)));
    if (!plain.length) continue;
    const mark = dynamicMark(parts, "xl/workbook.xml");
    const edits = plain.map((cell) => [cell.address, { formula: { formula: cell.formula!.text, block: blockAt(cell), mark } }] as const);
    parts.set(path, strToU8(withEdits(xml, new Map(edits), rows)));
  }
  for (const [path, bytes] of parts) all[path] = bytes;
}

export function finished(file: Uint8Array, parts: readonly Part[]): Uint8Array {
  const all = unzipSync(file);
  const edit = (path: string, change: (xml: string) => string) => {
    all[path] = strToU8(change(strFromU8(all[path])));
  };
  edit("xl/styles.xml", orderedFonts);
  edit("xl/workbook.xml", (xml) => quotedSheets(calm(xml)));
  for (const path of Object.keys(all)) if (/^xl\/worksheets\/[^/]+\.xml$/.test(path)) edit(path, (xml) => parted(typedErrors(xml)));
  storeCalls(all);
  parts.forEach(({ path, xml }, i) => {
    all[path] = strToU8(xml);
    const relation = `<Relationship Id="part${i + 1}" Type="${customXml}" Target="../${path}"/>`;
    edit("xl/_rels/workbook.xml.rels", (rels) => rels.replace("</Relationships>", `${relation}</Relationships>`));
  });
  return zipSync(all, { mtime: made, level: 9 });
}

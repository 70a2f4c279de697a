import { read, type WorkBook, type WorkSheet } from "@e965/xlsx";
import { parseXml, type XmlElement } from "@rgrove/parse-xml";
import { strFromU8, unzipSync } from "fflate";

/** What readers that are none of ours find in a workbook file: SheetJS in its cells, an XML parser in what SheetJS does not read. */

type Facts = Readonly<Record<string, unknown>>;

const cellsIn = (sheet: WorkSheet): Facts =>
  Object.fromEntries(
    Object.entries(sheet)
      .filter(([at, cell]) => !at.startsWith("!") && cell.t !== "z" && (cell.f !== undefined || cell.v !== ""))
      .map(([at, { t, v, w, f, F, z, l, c }]) => [
        at,
        { t, v, w, f, F, z, link: l?.Target, notes: c?.map(({ t: text }: { t: string }) => text) },
      ]),
  );

const elements = (root: XmlElement, name: string): XmlElement[] =>
  root.children.flatMap((child) => {
    const element = child as XmlElement;
    if (element.type !== "element") return [];
    return [...(element.name.replace(/^.*:/, "") === name ? [element] : []), ...elements(element, name)];
  });

/** An element's own attributes and the text in it, whatever their order; ids of styles are each file's own. */
const line = ({ attributes, text }: XmlElement): string =>
  JSON.stringify([
    Object.entries(attributes)
      .filter(([name, value]) => !/^(dxfId|priority|stopIfTrue|xr:uid)$/.test(name) && value !== "0" && value !== "false")
      .sort(),
    text.trim(),
  ]);

interface Part {
  readonly path: string;
  readonly root: XmlElement;
}

/** The XML parts of a kind, in the order of their numbers. */
function partsOf(file: Uint8Array, kind: RegExp): Part[] {
  const number = (path: string) => Number(/(\d+)\.xml$/.exec(path)?.[1] ?? 0);
  return Object.entries(unzipSync(file))
    .filter(([path]) => kind.test(path))
    .sort(([a], [b]) => number(a) - number(b))
    .map(([path, bytes]) => ({ path, root: parseXml(strFromU8(bytes)).root! }));
}

const listed = (file: Uint8Array, kind: RegExp, names: readonly string[]): string[][] =>
  partsOf(file, kind).map(({ root }) => names.flatMap((name) => elements(root, name).map((element) => `${name} ${line(element)}`)).sort());

/** Everything a trip must not lose. */
export function seen(file: Uint8Array) {
  const book: WorkBook = read(file, { cellFormula: true, cellNF: true, cellStyles: true });
  return {
    sheets: book.SheetNames,
    names: (book.Workbook?.Names ?? []).map(({ Name, Ref, Sheet }) => `${Sheet ?? ""} ${Name} ${Ref.replaceAll("'", "")}`).sort(),
    title: book.Props?.Title,
    cells: Object.fromEntries(book.SheetNames.map((name) => [name, cellsIn(book.Sheets[name])] as const)) as Record<string, Facts>,
    merges: book.SheetNames.map((name) => (book.Sheets[name]["!merges"] ?? []).map(({ s, e }) => [s.r, s.c, e.r, e.c].join()).sort()),
    widths: book.SheetNames.map((name) => (book.Sheets[name]["!cols"] ?? []).map((column) => column && [column.width, column.hidden])),
    // Rules, lists, print set-up: what SheetJS leaves unread.
    sheetsBeside: listed(file, /^xl\/worksheets\/sheet\d+\.xml$/, ["cfRule", "dataValidation", "pageSetup", "pageMargins", "pane"]),
    tables: listed(file, /^xl\/tables\/table\d+\.xml$/, ["tableColumn"]),
    charts: listed(file, /^xl\/charts\/chart\d+\.xml$/, ["f", "v"]),
    notes: listed(file, /^xl\/comments\d+\.xml$/, ["comment"]),
  };
}

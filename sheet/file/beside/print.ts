import { atOf } from "../../../shared/xlsx/address";
import { elementOrder } from "../../../shared/xlsx/elements";
import { letters } from "../../../shared/xlsx/letters";
import { fixed, namesXml } from "../../../shared/xlsx/names";
import { edit } from "../../../shared/xlsx/package";
import { sheetWord } from "../../../shared/xlsx/sheetname";
import { tokensOf } from "../../../shared/xlsx/tokens";
import { allOf, childrenOf, isTrue, nameOf, read } from "../../../shared/xlsx/xml";
import type { Ranges } from "./followed";
import { sheetHas } from "./losses";
import { type BySheet, bySheet, type FileRead, type Piece, type SheetData, type SheetMade, type SheetRead } from "./piece";

/** How a sheet is printed, as its file says it. */
export interface Print {
  /** Elements of the sheet's part, as they stand there. */
  readonly elements: readonly string[];
  readonly fits: boolean;
  /** Rows and columns printed on every page, and what is printed at all: names that a workbook keeps. */
  readonly names: Readonly<Record<string, string>>;
  /** The keys of the ranges behind the names, and of the first cells after each break: they move with the sheet's rows. */
  readonly follows?: Readonly<Record<string, readonly string[]>>;
}

const printed = ["printOptions", "pageMargins", "pageSetup", "headerFooter", "rowBreaks", "colBreaks"];
const printNames = ["_xlnm.Print_Area", "_xlnm.Print_Titles"];

/** Without the printer settings part, which is binary data of one printer driver. */
const withoutPrinter = (xml: string) => xml.replace(/\s+\w+:\w+="[^"]*"/g, "");

const breaks = ["rowBreaks", "colBreaks"];

/** The ranges that a name lists, without their sheet and dollar signs. */
const rangesIn = (text: string): string[] => {
  const plain = tokensOf(text).filter(({ kind, text }) => kind !== "sheet" && !text.endsWith("!"));
  return plain
    .map(({ text }) => text.replace(/\$/g, ""))
    .join("")
    .split(",");
};

/** The first cell after a break. */
const afterBreak = (name: string, id: number): string => (name === "rowBreaks" ? `A${id + 1}` : `${letters(id)}1`);

function printOf({ own: { name: sheet, root, xml }, sheet: { id } }: SheetRead, { workbook: { names }, follow }: FileRead): Print {
  const elements = childrenOf(root).filter((child) => printed.includes(nameOf(child)) && !child.name.includes(":"));
  const own = names.filter((one) => one.sheet === sheet && printNames.includes(one.name));
  const listed = [
    ...own.map(({ name, text }) => [name, rangesIn(text)] as const),
    ...elements
      .filter((element) => breaks.includes(element.name))
      .map(
        (element) => [element.name, childrenOf(element, "brk").map((one) => afterBreak(element.name, Number(one.attributes.id)))] as const,
      ),
  ];
  const followed = (name: string, range: string, i: number) => {
    follow(id, `${name} ${i}`, range);
    return `${name} ${i}`;
  };
  return {
    elements: elements.filter(({ name }) => !breaks.includes(name)).map(({ start, end }) => withoutPrinter(xml.slice(start, end))),
    fits: allOf(root, "pageSetUpPr").some(({ attributes }) => isTrue(attributes.fitToPage)),
    names: Object.fromEntries(own.map(({ name, text }) => [name, text])),
    follows: Object.fromEntries(listed.map(([name, ranges]) => [name, ranges.map((range, i) => followed(name, range, i))])),
  };
}

/** For a sheet that has none: as wide as the page, lying where the sheet is wide, its frozen rows on every page. */
function usualPrint(sheet: string, wide: boolean, frozenRows: number): Print {
  return {
    elements: [
      '<pageMargins left="0.5" right="0.5" top="0.6" bottom="0.6" header="0.3" footer="0.3"/>',
      `<pageSetup orientation="${wide ? "landscape" : "portrait"}" fitToWidth="1" fitToHeight="0"/>`,
      "<headerFooter><oddFooter>&amp;L&amp;A&amp;RPage &amp;P of &amp;N</oddFooter></headerFooter>",
    ],
    fits: true,
    names: frozenRows ? { "_xlnm.Print_Titles": `${sheetWord(sheet)}$1:$${frozenRows}` } : {},
  };
}

const fitting = '<pageSetUpPr fitToPage="1"/>';

function withFit(properties = "<sheetPr/>"): string {
  const open = properties.endsWith("/>") ? `${properties.slice(0, -2)}></sheetPr>` : properties;
  return open.replace("</sheetPr>", `${fitting}</sheetPr>`);
}

/** A sheet's part with its print set-up, all in the order of the standard. */
function withPrint(xml: string, { elements, fits }: Print): string {
  const root = read(xml);
  const children = childrenOf(root);
  const parts = children.map((child) => ({ name: nameOf(child), text: xml.slice(child.start, child.end) }));
  const own = parts.find(({ name }) => name === "sheetPr")?.text;
  const rest = parts.filter(({ name }) => !printed.includes(name) && (name !== "sheetPr" || !fits));
  const added = elements.map((text) => ({ name: /^<([\w]+)/.exec(text)![1], text }));
  const all = [...(fits ? [{ name: "sheetPr", text: withFit(own) }] : []), ...rest, ...added];
  const place = ({ name }: { name: string }) => (elementOrder.includes(name) ? elementOrder.indexOf(name) : elementOrder.length);
  all.sort((a, b) => place(a) - place(b));
  return xml.slice(0, children[0].start) + all.map(({ text }) => text).join("") + xml.slice(children.at(-1)!.end);
}

const pageWidth = 700;

/** Rows kept in sight while the others scroll are a table's head, unless they fill the screen. */
const headRows = ({ panes }: SheetData): number => (panes && panes.ySplit <= 10 ? panes.ySplit : 0);

/** A sheet may have been given another name since its print set-up was read. */
const renamed = (text: string, sheet: string): string =>
  text.replace(/(^|,)(?:'(?:[^']|'')*'|[^'!,]+)!/g, (_, comma) => comma + sheetWord(sheet));

const breakXml = (name: string, cells: readonly string[]): string => {
  const [axis, last] = name === "rowBreaks" ? (["row", 16383] as const) : (["column", 1048575] as const);
  const lines = cells.map((cell) => `<brk id="${atOf(cell)[axis]}" max="${last}" man="1"/>`);
  return `<${name} count="${lines.length}" manualBreakCount="${lines.length}">${lines.join("")}</${name}>`;
};

/** The set-up where rows and columns may have come and gone meanwhile. */
function moved({ elements, fits, follows = {} }: Print, sheet: string, here: Ranges): Print {
  const found = Object.entries(follows)
    .map(([name, keys]) => [name, keys.flatMap((key) => here[key] ?? [])] as const)
    .filter(([, ranges]) => ranges.length);
  const lines = found.filter(([name]) => breaks.includes(name)).map(([name, cells]) => breakXml(name, cells));
  const names = found.filter(([name]) => !breaks.includes(name));
  return {
    elements: [...elements, ...lines],
    fits,
    names: Object.fromEntries(names.map(([name, ranges]) => [name, ranges.map((range) => sheetWord(sheet) + fixed(range)).join(",")])),
  };
}

/** How a sheet of the page is printed: as the file it came from said, or as usual. */
function printFor({ sheet, here }: SheetMade, known: Print | undefined): Print {
  if (known?.follows) return moved(known, sheet.name, here);
  if (known)
    return { ...known, names: Object.fromEntries(Object.entries(known.names).map(([name, text]) => [name, renamed(text, sheet.name)])) };
  const width = Object.values(sheet.cols).reduce((sum, { size, isHidden }) => sum + (isHidden ? 0 : (size ?? 0)), 0);
  return usualPrint(sheet.name, width > pageWidth, headRows(sheet));
}

/** With the names of ranges, among which those of the print set-up are. */
export const print: Piece<BySheet<Print>> = {
  ...bySheet<Print>({ name: "print", read: printOf, lost: [["pictures in headers and footers", sheetHas(/<legacyDrawingHF[\s/]/)]] }),
  write({ parts, path, sheets, data }, kept) {
    const prints = sheets.map((one) => printFor(one, kept?.[one.sheet.id]));
    for (const [i, one] of sheets.entries()) edit(parts, one.path, (xml) => withPrint(xml, prints[i]));
    edit(parts, path, (xml) => xml.replace("</sheets>", () => `</sheets>${namesXml(data.namedRanges, prints)}`));
  },
};

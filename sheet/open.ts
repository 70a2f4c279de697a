import type * as OSpreadsheet from "@odoo/o-spreadsheet";
import type { WorkbookData } from "@odoo/o-spreadsheet";
import { type Contents, checkExtent, contents, extent, type Read } from "./contents";
import { version } from "./data";
import { documentsOf } from "./documents";
import { aroundOf, type Reader, unknownOf } from "./known";
import { lost } from "./lost";
import { relationsOf, textOf, type Workbook, workbookOf } from "./parts";
import { type Print, printOf } from "./print";
import type { Beside } from "./save";
import { engineSheet } from "./sheetname";
import { asTyped } from "./stored";
import { unzip } from "./unzip";
import { escaped } from "./xml";

/** A workbook from disk as the page takes it. */
export interface Opened extends Beside {
  readonly book: object;
  /** What the page does not keep of it, in words. */
  readonly lost: readonly string[];
  /** Cells whose formulas the page does not know; they show an error and are saved as they came. */
  readonly unknown: readonly string[];
}

export type Engine = Pick<typeof OSpreadsheet, "load" | "helpers"> & Reader;

const pictureTypes: Readonly<Record<string, string>> = { png: "png", jpg: "jpeg", jpeg: "jpeg", gif: "gif", bmp: "bmp", webp: "webp" };

function pictureUrl(path: string, bytes: Uint8Array): string | undefined {
  const type = pictureTypes[path.slice(path.lastIndexOf(".") + 1).toLowerCase()];
  if (!type) return undefined;
  let letters = "";
  for (let at = 0; at < bytes.length; at += 0x8000) letters += String.fromCharCode(...bytes.subarray(at, at + 0x8000));
  return `data:image/${type};base64,${btoa(letters)}`;
}

const own = ["worksheet", "workbook", "styleSheet", "sst", "table"];

/** The engine's reader knows these elements without a prefix only. */
function withoutPrefix(xml: string): string {
  const prefix = /^(?:\uFEFF)?(?:\s*<[?!][^>]*>)*\s*<(\w+):(\w+)[\s>]/.exec(xml);
  return prefix && own.includes(prefix[2]) ? xml.replace(new RegExp(`<(/?)${prefix[1]}:`, "g"), "<$1") : xml;
}

/** Rules and lists of a sheet may call our functions too. */
const withNames = (xml: string): string =>
  xml.replace(/(<formula[12]?>)([^<]*)(?=<)/g, (_, tag, formula) => tag + asTyped(formula.replace(/_xlfn\.(?:_xlws\.)?/g, "")));

/** Targets beside the part that names them, as the engine's reader expects them. */
function relationsXml({ parts }: Workbook, path: string): string {
  const from = path.replace(/_rels\/([^/]*)\.rels$/, "$1");
  const folder = from.split("/").slice(0, -1);
  const near = (target: string): string => {
    const steps = target.split("/");
    const shared = folder.findIndex((step, i) => step !== steps[i]);
    const common = shared < 0 ? folder.length : shared;
    return [...folder.slice(common).map(() => ".."), ...steps.slice(common)].join("/");
  };
  const targets = new Map(
    relationsOf(parts, from)
      .filter(({ outside }) => !outside)
      .map(({ id, path: target }) => [id, near(target)]),
  );
  return textOf(parts, path).replace(/<Relationship\s[^>]*>/g, (tag) => {
    const target = targets.get(/\sId="([^"]*)"/.exec(tag)?.[1] ?? "");
    return target === undefined ? tag : tag.replace(/\sTarget="[^"]*"/, ` Target="${escaped(target)}"`);
  });
}

/** The parts that tell how a workbook looks, as the engine's reader takes them. */
function partsFor(workbook: Workbook): Record<string, unknown> {
  const sheets = new Set(workbook.sheets.map(({ path }) => path));
  const parts: Record<string, unknown> = {};
  for (const [path, bytes] of workbook.parts) {
    if (/media\/image/.test(path)) {
      const imageSrc = pictureUrl(path, bytes);
      if (imageSrc) parts[path] = { imageSrc };
    } else if (path.endsWith(".rels")) parts[path] = relationsXml(workbook, path);
    else if (path.endsWith(".xml") && !path.startsWith("customXml/") && !path.startsWith("docProps/")) {
      const xml = withoutPrefix(textOf(workbook.parts, path)).replace(/^\uFEFF/, "");
      parts[path] = sheets.has(path) ? withNames(xml) : xml;
    }
  }
  return parts;
}

/** Cells without their looks: for a file whose looks the engine cannot read. */
const plainData = ({ sheets }: Read): WorkbookData =>
  ({ version, sheets: sheets.map(({ name }) => ({ id: name, name, cells: {} })), styles: {}, formats: {}, borders: {} }) as never;

function looks(workbook: Workbook, read: Read, { load }: Engine): { readonly data: WorkbookData; readonly failed: boolean } {
  const { debug } = console;
  console.debug = () => {};
  try {
    return { data: load(partsFor(workbook)), failed: false };
  } catch {
    return { data: plainData(read), failed: true };
  } finally {
    console.debug = debug;
  }
}

const isLink = (content: unknown) => typeof content === "string" && /^\[[^\]]+\]\([^)]+\)$/.test(content);

/** The engine's reader takes text such as "3/4" for a date and knows formulas of one program only: the cells are read by us. */
function withCells(sheet: WorkbookData["sheets"][number], own: Contents, unknown: ReadonlySet<string>): void {
  const links = Object.entries(sheet.cells).filter(([, content]) => isLink(content));
  const formulas = own.formulas.map(({ address, text, filed, kind, shown }) => [
    address,
    kind === "other" ? (shown ?? "") : unknown.has(`${own.name}!${address}`) ? `=${filed}` : text,
  ]);
  sheet.cells = { ...Object.fromEntries(own.values), ...Object.fromEntries(formulas), ...Object.fromEntries(links) };
  const { columns, rows } = extent(own);
  sheet.colNumber = Math.max(sheet.colNumber ?? 0, columns);
  sheet.rowNumber = Math.max(sheet.rowNumber ?? 0, rows);
  checkExtent(own.name, sheet.colNumber, sheet.rowNumber);
}

function unknownCells(read: Read, engine: Engine): string[] {
  const around = aroundOf(read);
  return read.sheets.flatMap(({ name, formulas }) =>
    formulas.filter(({ text, kind }) => kind !== "other" && unknownOf(text, engine, around)).map(({ address }) => `${name}!${address}`),
  );
}

/** Reads a workbook file for the page; throws Unreadable with the reason. */
export function opened(bytes: Uint8Array, engine: Engine): Opened {
  const workbook = workbookOf(unzip(bytes));
  const read = contents(workbook);
  const unknown = unknownCells(read, engine);
  const { data, failed } = looks(workbook, read, engine);
  const byName = new Map(data.sheets.map((sheet) => [sheet.name, sheet]));
  const print: Record<string, Print> = {};
  data.sheets = read.sheets.flatMap((own) => {
    const sheet = byName.get(own.name);
    if (!sheet) return [];
    sheet.name = engineSheet(own.name);
    withCells(sheet, own, new Set(unknown));
    print[sheet.id] = printOf(own.xml, own.root, own.name, workbook.names);
    return [sheet];
  });
  return {
    book: { ...data, namedRanges: read.names },
    documents: documentsOf(workbook.parts, workbook.path),
    print,
    lost: failed ? ["its looks, which could not be read: only what is in the cells opens"] : lost(workbook),
    unknown,
  };
}

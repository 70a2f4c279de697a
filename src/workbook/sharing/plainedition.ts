import type { Cells } from "../../../shared/columns";
import { counted } from "../../../shared/host";
import { isFault, type Outcome } from "../../../shared/outcome";
import type { Shop } from "../../../shared/settings";
import { fromInternal } from "../../../shared/unit";
import { addressOf, cellsOf, sizeOf } from "../../../shared/xlsx/address";
import { type FileCell, type FileRow, rowsOf, sharedStringsOf } from "../../../shared/xlsx/cells";
import { declare, edit, put, relate } from "../../../shared/xlsx/package";
import { relationsOf, textOf, type Workbook, workbookOf } from "../../../shared/xlsx/parts";
import { joined, type Piece, piecesOf } from "../../../shared/xlsx/pieces";
import { unzip } from "../../../shared/xlsx/unzip";
import { type NewFormula, valuesWritten } from "../../../shared/xlsx/values";
import { escaped, read } from "../../../shared/xlsx/xml";
import { zipped } from "../../../shared/xlsx/zip";
import { asTyped, callsOurs, isOneCall } from "../../calls";
import { readShop } from "../../catalogue";
import { type Ask, isRef, noShop } from "../formula";
import { isColumn, type Ref, refText, refTo } from "../place";
import { type Habits, plain } from "../plain";
import { type BakeTable, bakeLookup, bakeTable, firstRow, headingRows, headings, tableName, width } from "./baketable";
import { filledBy, grey } from "./greyed";
import { type Called, callsIn, type NameOf, refOf } from "./parsed";
import { valuesOnly } from "./valuesonly";
import { woodLookup, woods } from "./woodtable";

/** This very workbook for people without the add-in: plain formulas where there are some, a table for the oven, values for the rest. */

export interface Plain {
  readonly file: Uint8Array;
  /** How many cells calculate still, and how many are the values of the day. */
  readonly calculates: number;
  readonly fixed: number;
  readonly words: string;
}

interface OpenSheet {
  readonly name: string;
  readonly path: string;
  readonly rows: readonly FileRow[];
  readonly cells: ReadonlyMap<string, FileCell>;
}

const heldBy = ({ type, value }: FileCell): Outcome | undefined => {
  if (value === undefined) return undefined;
  if (type === "n") return Number(value);
  if (type === "b") return value === "1";
  return type === "e" ? { error: value as "#N/A", message: "" } : value;
};

function sheetsOf({ parts, path, sheets }: Workbook): OpenSheet[] {
  const shared = relationsOf(parts, path).find(({ kind }) => kind === "sharedStrings")?.path;
  const strings = shared && parts.has(shared) ? sharedStringsOf(read(textOf(parts, shared))) : [];
  return sheets.map((sheet) => {
    const rows = rowsOf(textOf(parts, sheet.path), strings);
    return { ...sheet, rows, cells: new Map(rows.flatMap(({ cells }) => cells.map((cell) => [cell.address, cell] as const))) };
  });
}

const cellAt = (sheets: readonly OpenSheet[], at: Ref): FileCell | undefined =>
  sheets.find(({ name }) => name === at.sheet)?.cells.get(addressOf(at));

/** What a shop's range holds, as the functions take it. */
const shopCells = (sheets: readonly OpenSheet[], { sheet, row, column, rows }: Ref): Cells =>
  Array.from({ length: rows }, (_, down) =>
    [0, 1].map((right) => {
      const cell = cellAt(sheets, refTo(sheet, row + down, column + right));
      const value = cell && heldBy(cell);
      return isFault(value) ? null : (value ?? null);
    }),
  );

/** How one shop of the workbook is asked in plain formulas: its cells where something may be typed, else what holds now. */
function habitsOf(sheets: readonly OpenSheet[], range: Ref, shop: Shop): Habits {
  const standard: Habits["standard"] = (setting, system) => readShop([["units", system]]).get(setting);
  return {
    units: shop.units,
    standard,
    setting(name, setting) {
      const now = shop.get(setting);
      const holds = typeof now === "number" ? String(setting.kind ? fromInternal(now, shop.units[setting.kind]) : now) : undefined;
      if (holds === undefined) return undefined;
      for (let down = 0; down < range.rows; down++) {
        const label = cellAt(sheets, refTo(range.sheet, range.row + down, range.column));
        if (
          String(label?.value ?? "")
            .trim()
            .toLowerCase() !== name.toLowerCase()
        )
          continue;
        const cell = refText({ ...refTo(range.sheet, range.row + down, range.column + 1), whole: true }, "", undefined);
        return `IF(ISNUMBER(${cell}),${cell},${holds})`;
      }
      return holds;
    },
  };
}

/** Makes plain formulas of the calls in one workbook. */
class Twins {
  private readonly shops = new Map<string, { readonly habits: Habits; readonly table: BakeTable } | undefined>();
  /** One for each shop whose oven is asked: the likely range asks with the ends of what the oven may do. */
  readonly tables: BakeTable[] = [];
  /** Whether woods are looked up. */
  woods = false;

  constructor(
    private readonly sheets: readonly OpenSheet[],
    readonly nameOf: NameOf,
  ) {}

  private shopOf(range: Ref | undefined) {
    const key = range ? refText({ ...range, whole: true }, "", undefined) : "";
    if (!this.shops.has(key)) this.shops.set(key, this.read(range));
    return this.shops.get(key);
  }

  /** Undefined where the shop cannot be read: then its cells stay values. */
  private read(range: Ref | undefined) {
    try {
      const cells: Cells = range ? shopCells(this.sheets, range) : [["US"]];
      const shop = readShop(cells);
      return { habits: habitsOf(this.sheets, range ?? refTo("", 0, 0, 0), shop), table: bakeTable(shop, cells) };
    } catch {
      return undefined;
    }
  }

  /** A call in plain formulas, for one row of what it fills. */
  of({ contract, given }: Called, from: string, row: number | undefined, column: number): string | undefined {
    if (
      !given ||
      (row === undefined &&
        contract.per === "piece" &&
        Object.entries(given).some(([key, ref]) => key !== "shop" && isRef(ref) && isColumn(ref)))
    )
      return undefined;
    if (contract.name === "GRAVITY") {
      const found = woodLookup(given, from, row);
      this.woods ||= found !== undefined;
      return found;
    }
    const { shop } = given;
    const stands = this.shopOf(isRef(shop) ? shop : undefined);
    if (!stands) return undefined;
    if (contract.name === "BAKE") {
      if (!this.tables.includes(stands.table)) this.tables.push(stands.table);
      const top = headingRows(this.tables)[this.tables.indexOf(stands.table)];
      return bakeLookup(stands.table, top, given, from, row);
    }
    const { shop: _, ...rest } = given;
    const ask: Ask = {
      contract,
      given: isRef(shop) || !contract.shop ? rest : { ...rest, shop: shop ?? noShop },
      ...(contract.returns.form === "row" ? { at: [1, column + 1] as const } : {}),
    };
    return plain(stands.habits).write(ask, from, row);
  }
}

/** Nothing until something is typed, as the functions have it. */
function unlessBlank({ contract, given }: Called, from: string, row: number | undefined, text: string): string {
  const needed = Object.entries(given ?? {}).flatMap(([key, value]) =>
    isRef(value) && key !== "shop" && contract.args[key] && !contract.args[key].optional ? [refText(value, from, row)] : [],
  );
  const blank = needed.map((cell) => `${cell}=""`).join(",");
  return needed.length ? `IF(AND(${blank}),"",${text})` : text;
}

/** The one cell that a formula takes of an answer of several, `INDEX(call,1,3)`: the twin of that cell stands for all of it. */
function askedFor(pieces: readonly Piece[], { contract, from, to }: Called): { from: number; to: number; column: number | undefined } {
  if (contract.returns.form === "cell") return { from, to, column: 0 };
  const around = [...pieces.slice(from - 2, from), ...pieces.slice(to + 1, to + 6)].map(({ text }) => text.toUpperCase());
  const [index, open, comma1, row, comma2, column, close] = around;
  const isOne =
    index === "INDEX" && open === "(" && comma1 === "," && row === "1" && comma2 === "," && /^\d+$/.test(column) && close === ")";
  return isOne ? { from: from - 2, to: to + 5, column: Number(column) - 1 } : { from, to, column: undefined };
}

/** The plain formulas of one cell's formula, by the cells that it fills; undefined where it has none. */
function rewritten(cell: FileCell, sheet: OpenSheet, twins: Twins): Map<string, NewFormula> | undefined {
  const { formula } = cell;
  if (!formula || formula.kind === "shared" || formula.kind === "other") return undefined;
  const text = asTyped(formula.text);
  const { pieces, calls } = callsIn(text, sheet.name, twins.nameOf);
  if (!calls.length) return undefined;
  const made = new Map<string, NewFormula>();
  const { block } = formula;
  if (block && sizeOf(block) > 1) {
    const [call] = calls;
    if (!isOneCall(`=${text}`) || call.contract.per !== "piece") return undefined;
    for (const at of cellsOf(block)) {
      const row = at.row - block.top;
      const twin = twins.of(call, sheet.name, row, at.column - block.left);
      if (twin === undefined) return undefined;
      made.set(addressOf(at), { formula: unlessBlank(call, sheet.name, row, twin) });
    }
    return made;
  }
  const parts = [...pieces];
  for (const call of calls) {
    const { from, to, column } = askedFor(pieces, call);
    const twin = column === undefined ? undefined : twins.of(call, sheet.name, undefined, column);
    if (twin === undefined) return undefined;
    for (let at = from; at <= to; at++) parts[at] = { kind: "mark", text: at === from ? `(${twin})` : "" };
  }
  const whole = joined(parts).replace(/@(?=\()/g, "");
  const isBare = isOneCall(`=${text}`);
  made.set(cell.address, { formula: isBare ? unlessBlank(calls[0], sheet.name, undefined, whole) : whole });
  return made;
}

const inline = (address: string, value: string | number): string =>
  typeof value === "number"
    ? `<c r="${address}"><v>${value}</v></c>`
    : `<c r="${address}" t="inlineStr"><is><t xml:space="preserve">${escaped(value)}</t></is></c>`;

const line = (row: number, values: readonly (string | number | undefined)[]): string =>
  `<row r="${row + 1}">${values.map((value, column) => (value === undefined ? "" : inline(addressOf({ row, column }), value))).join("")}</row>`;

const main = "http://schemas.openxmlformats.org/spreadsheetml/2006/main";

/** Puts what is looked up on a sheet of its own, at the end: the table of the oven, the woods beside it. */
function addTable(workbook: Workbook, tables: readonly BakeTable[]): void {
  const { parts, path } = workbook;
  const own = `${path.replace(/[^/]*$/, "")}worksheets/bakeminutes.xml`;
  const bakes = tables.flatMap(({ unit, rows }) => [headings(unit), ...rows, []]);
  const beside = [["wood", "oven-dry specific gravity"], ...woods];
  const lines = [
    line(0, ["Minutes in the oven, with the shop's settings on the day this copy was made"]),
    line(1, ["Down: the thinnest side. Across: how many times as wide. Between two lines the longer time counts."]),
    line(2, ["The resin maker's label comes first. Do not use a kitchen oven. Stay with it. Bake drained pieces only."]),
    ...Array.from({ length: Math.max(bakes.length, beside.length) }, (_, i) => {
      const left: readonly (string | number)[] = bakes[i] ?? [];
      return line(firstRow + i, [...left, ...Array.from({ length: width - left.length }, () => undefined), ...(beside[i] ?? [])]);
    }),
  ];
  put(
    parts,
    own,
    `<?xml version="1.0" encoding="UTF-8" standalone="yes"?>\n<worksheet xmlns="${main}"><cols><col min="1" max="1" width="16" customWidth="1"/></cols><sheetData>${lines.join("")}</sheetData></worksheet>`,
  );
  declare(parts, own, "application/vnd.openxmlformats-officedocument.spreadsheetml.worksheet+xml");
  const id = relate(parts, path, "worksheet", "worksheets/bakeminutes.xml");
  edit(parts, path, (xml) => {
    const numbers = [...xml.matchAll(/\bsheetId="(\d+)"/g)].map(([, number]) => Number(number));
    const office = "http://schemas.openxmlformats.org/officeDocument/2006/relationships";
    return xml.replace(
      /<\/((?:\w+:)?)sheets>/,
      (end, prefix: string) =>
        `<${prefix}sheet name="${tableName}" sheetId="${Math.max(...numbers) + 1}" r:id="${id}" xmlns:r="${office}"/>${end}`,
    );
  });
}

export function plainEdition(file: Uint8Array): Plain {
  const parts = unzip(file);
  const workbook = workbookOf(parts);
  const sheets = sheetsOf(workbook);
  const names = new Map(workbook.names.filter(({ sheet }) => sheet === undefined).map(({ name, text }) => [name.toLowerCase(), text]));
  const nameOf: NameOf = (name) => {
    const text = names.get(name.toLowerCase());
    return text === undefined ? undefined : refOf(piecesOf(text.trim()), "", () => undefined);
  };
  const twins = new Twins(sheets, nameOf);
  const isTaken = sheets.some(({ name }) => name.toLowerCase() === tableName.toLowerCase());
  let calculates = 0;
  const fixed = new Map<OpenSheet, string[]>();
  for (const sheet of sheets) {
    const formulas = new Map<string, NewFormula>();
    for (const { cells } of sheet.rows)
      for (const cell of cells) {
        if (!cell.formula || !callsOurs(cell.formula.text)) continue;
        const looksUp = /PORE[._](?:BAKE|GRAVITY)\(/i.test(cell.formula.text);
        const made = looksUp && isTaken ? undefined : rewritten(cell, sheet, twins);
        for (const [address, one] of made ?? []) formulas.set(address, one);
        if (made) calculates++;
        else fixed.set(sheet, [...(fixed.get(sheet) ?? []), ...filledBy(cell, sheet)]);
      }
    if (!formulas.size) continue;
    const values = new Map(
      [...formulas.keys()].map((address) => [address, sheet.cells.has(address) ? heldBy(sheet.cells.get(address)!) : undefined]),
    );
    const xml = textOf(parts, sheet.path);
    put(parts, sheet.path, valuesWritten({ xml, rows: sheet.rows }, values, formulas));
  }
  if (twins.tables.length || twins.woods) addTable(workbook, twins.tables);
  grey(workbook, fixed);
  const { cells: values, words } = valuesOnly(parts);
  const still = counted(calculates, "formula still calculates", "formulas still calculate");
  const marked = fixed.size ? "; fixed values are gray" : "";
  return { file: zipped(parts), calculates, fixed: values, words: `${calculates ? `${still}; ${words}` : words}${marked}` };
}

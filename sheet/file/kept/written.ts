import type * as OSpreadsheet from "@odoo/o-spreadsheet";
import type { Model, WorkbookData } from "@odoo/o-spreadsheet";
import { addressOf, atOf, blockOf } from "../../../shared/xlsx/address";
import { type FileRow, rowsOf, sharedStringsOf } from "../../../shared/xlsx/cells";
import { addDocuments, documentsOf } from "../../../shared/xlsx/documents";
import { type Edit, withEdits } from "../../../shared/xlsx/edits";
import { type LookChange, LookPool } from "../../../shared/xlsx/looks";
import { dynamicMark } from "../../../shared/xlsx/metadata";
import { withoutReferences } from "../../../shared/xlsx/move";
import type { Book } from "../../../shared/xlsx/moved/bookparts";
import { dropPart } from "../../../shared/xlsx/package";
import { relationIn, relationsOf, textOf } from "../../../shared/xlsx/parts";
import { engineSheet } from "../../../shared/xlsx/sheetname";
import { orderSheets, renameSheets } from "../../../shared/xlsx/sheets";
import { agreeHeaders } from "../../../shared/xlsx/tableheaders";
import { agreeTotals } from "../../../shared/xlsx/tabletotals";
import { type Parts, unzip } from "../../../shared/xlsx/unzip";
import { flawOf, NotWhole, sameBytes } from "../../../shared/xlsx/whole";
import { childrenOf, encoded, read } from "../../../shared/xlsx/xml";
import { zipped } from "../../../shared/xlsx/zip";
import { bookOf } from "../../book";
import type { Places } from "../beside/places";
import type { Beside } from "../beside/workbook";
import { unknownOf } from "../known";
import { type Engine as Opening, opened } from "../open";
import { isOfResult } from "../resultformats";
import { withHidden, withNames } from "./booknames";
import { cellLookChanges } from "./celllooks";
import { type Engine as Cells, cellEdits, formulaAt } from "./cells";
import { Dependents } from "./dependents";
import { contentChanges, type Pair } from "./difference";
import { elementOf } from "./elements";
import { groupsKey, withGroups } from "./groups";
import { withColumns, withRows } from "./lines";
import { isLink, targetOf, withLinks } from "./links";
import { madeRules } from "./made";
import { sheetCell } from "./place";
import { replayed } from "./replayed";
import { ruleChanges, withColors, withTyping } from "./rules";
import { withMerges, withTab, withView } from "./sheetview";
import { type Structure, structureOf, touchKey } from "./structure";
import { withTables } from "./tables";

export type Engine = Pick<typeof OSpreadsheet, "Model" | "DEFAULT_LOCALE"> & Opening & Cells;

type Position = OSpreadsheet.CellPosition;

interface Baseline {
  readonly before: WorkbookData;
  /** Where in their parts the rules stand, by the paths of the parts. */
  readonly places: ReadonlyMap<string, Places>;
}

/** The file as it would open now, as the engine's own data. */
function baseline(book: Book, paths: ReadonlyMap<string, string>, engine: Engine): Baseline {
  const again = opened(zipped(book.parts, 0), engine);
  const model = quietly(() => new engine.Model(again.book, { mode: "export_verification" as never }));
  const data = bookOf(model).book;
  const idAt = new Map([...paths].map(([id, path]) => [path, id]));
  const pathAt = structureOf(again.book).sheets;
  return {
    before: { ...data, sheets: data.sheets.map((sheet) => ({ ...sheet, id: idAt.get(pathAt[sheet.id]) ?? sheet.id })) },
    places: new Map(Object.entries(again.places).map(([id, own]) => [pathAt[id], own])),
  };
}

function quietly<T>(work: () => T): T {
  const { debug } = console;
  console.debug = () => {};
  try {
    return work();
  } finally {
    console.debug = debug;
  }
}

/** Formulas as the engine's own writer spells them: it knows which functions are new to files. */
async function spelling(
  formulas: ReadonlyMap<string, ReadonlyMap<string, string>>,
  now: WorkbookData,
  { Model }: Engine,
): Promise<(sheetId: string, address: string, typed: string) => string> {
  if (![...formulas.values()].some((own) => own.size)) return (_, __, typed) => typed.slice(1);
  const sheets = now.sheets.map(({ id, name, colNumber, rowNumber }) => ({
    id,
    name,
    colNumber,
    rowNumber,
    cells: Object.fromEntries(formulas.get(id) ?? []),
  }));
  const book = quietly(() => new Model({ version: now.version, sheets, namedRanges: { ...now.namedRanges } } as object));
  const { files } = await book.exportXLSX();
  const found = new Map<string, string>();
  sheets.forEach(({ id }, i) => {
    const file = files.find(({ path }) => path === `xl/worksheets/sheet${i}.xml`);
    for (const { cells } of file && "content" in file ? rowsOf(file.content, []) : [])
      for (const { address, formula } of cells) if (formula) found.set(`${id} ${address}`, formula.text);
  });
  return (sheetId, address, typed) => found.get(`${sheetId} ${address}`) ?? typed.slice(1);
}

/** The look that a cell has in the file, its own or its row's or column's. */
function lookAt(xml: string, rows: readonly FileRow[]): (address: string) => number {
  const own = new Map(rows.flatMap(({ cells }) => cells.map(({ address, look }) => [address, look] as const)));
  const ofRows = new Map(
    rows.flatMap(({ row, start, open }) => {
      const tag = xml.slice(start, open);
      const look = /\ss="(\d+)"/.exec(tag)?.[1];
      return look && /\scustomFormat="(?:1|true)"/.test(tag) ? [[row, Number(look)] as const] : [];
    }),
  );
  const columns = childrenOf(read(elementOf(xml, "cols") ?? "<cols/>")).map(({ attributes }) => ({
    min: Number(attributes.min) - 1,
    max: Number(attributes.max) - 1,
    look: Number(attributes.style ?? 0),
  }));
  return (address) => {
    const { row, column } = atOf(address);
    return own.get(address) ?? ofRows.get(row) ?? columns.find(({ min, max }) => column >= min && column <= max)?.look ?? 0;
  };
}

/** The order of calculation names cells with formulas: one that is no formula any more must not be in it. */
function withoutChain(parts: Parts, workbook: string, gone: (address: string, sheet: number) => boolean, all: boolean): void {
  const relation = relationsOf(parts, workbook).find(({ kind }) => kind === "calcChain");
  if (!relation || !parts.has(relation.path)) return;
  let sheet = 0;
  let left = 0;
  const xml = textOf(parts, relation.path);
  const now = xml.replace(/<(?:\w+:)?c\b[^>]*\/>/g, (tag) => {
    sheet = Number(/\si="(\d+)"/.exec(tag)?.[1] ?? sheet);
    if (gone(/\sr="([^"]*)"/.exec(tag)?.[1] ?? "", sheet)) return "";
    left++;
    // The sheet is said where it changes: here it is said of each that may follow another.
    return / i="/.test(tag) ? tag : tag.replace(/\s*\/>$/, ` i="${sheet}"/>`);
  });
  const removed = (xml.match(/<(?:\w+:)?c\b/g)?.length ?? 0) - left;
  if (!all && !removed) return;
  if (!all && left) {
    parts.set(relation.path, encoded(now));
    return;
  }
  dropPart(parts, workbook, relation.id, relation.path);
}

function withDocuments(parts: Parts, workbook: string, documents: Beside["documents"]): void {
  const there = documentsOf(parts, workbook);
  const changed = Object.entries(documents).filter(([namespace, xml]) => there[namespace] !== xml);
  const added: Record<string, string> = {};
  for (const [namespace, xml] of changed) {
    const own = there[namespace];
    const path =
      own &&
      relationsOf(parts, workbook).find((one) => one.kind === "customXml" && parts.has(one.path) && textOf(parts, one.path) === own)?.path;
    if (path) parts.set(path, encoded(xml));
    else added[namespace] = xml;
  }
  if (Object.keys(added).length) addDocuments(parts, workbook, added);
}

const stored = (kept: Beside["looks"], format: string): string => kept?.formats.find(([engine]) => engine === format)?.[1] ?? format;

/** The workbook on the page, written into the file that it came from: what was not changed is byte for byte as it came. */
export async function written(model: Model, beside: Beside & { readonly file: Uint8Array }, engine: Engine): Promise<Uint8Array> {
  const now = bookOf(model).book;
  const structure: Structure = structureOf(now);
  const came = unzip(beside.file);
  const { book, paths, resized } = replayed(came, structure);
  const { parts } = book;
  const { before, places } = baseline(book, paths, engine);
  const { getters } = model;

  const pairs = new Map<string, Pair>();
  for (const sheet of now.sheets)
    if (paths.has(sheet.id)) pairs.set(sheet.id, { now: sheet, before: before.sheets.find(({ id }) => id === sheet.id) });
  const at = (sheetId: string, address: string): Position => ({ sheetId, row: atOf(address).row, col: atOf(address).column });

  const around = {
    names: new Set(getters.getNamedRanges().map(({ name }) => name.toLowerCase())),
    sheets: new Set(getters.getSheetIds().map((id) => getters.getSheetName(id).toLowerCase())),
  };
  const isUnknown = (text: unknown) => typeof text === "string" && text.startsWith("=") && unknownOf(text, engine, around) !== undefined;
  // The engine moves no reference of a formula that it does not know: the file's own, moved here, is right.
  const isMoved = (old: unknown, own: unknown) =>
    structure.steps.length > 0 && isUnknown(own) && typeof old === "string" && withoutReferences(old) === withoutReferences(String(own));
  const changes = new Map(
    [...pairs].map(([id, pair]) => [
      id,
      contentChanges(pair).filter((address) => !isMoved(pair.before?.cells[address], pair.now.cells[address])),
    ]),
  );
  const seeds = [...changes].flatMap(([id, addresses]) => addresses.map((address) => at(id, address)));
  for (const [id, path] of paths) for (const address of resized.get(path) ?? []) if (pairs.has(id)) seeds.push(at(id, address));
  const graph = seeds.length ? new Dependents(model) : undefined;
  const dirty = graph?.of(seeds) ?? new Map<string, Position>();
  const unknown: Position[] = [];
  if (graph)
    for (const sheetId of getters.getSheetIds())
      for (const cell of getters.getCells(sheetId))
        if (cell.isFormula && unknownOf(cell.compiledFormula.toFormulaString(getters), engine, around))
          unknown.push(getters.getCellPosition(cell.id));
  const unsure = new Set([...(graph?.of(unknown) ?? new Map()).keys(), ...unknown.map(sheetCell)]);

  const typed = new Map(
    [...changes].map(([id, addresses]) => [
      id,
      new Map(addresses.flatMap((address) => [[address, formulaAt(model, at(id, address)) ?? ""] as const]).filter(([, text]) => text)),
    ]),
  );
  const spell = await spelling(typed, now, engine);

  const relations = relationsOf(parts, book.path);
  const stylesPath = relations.find(({ kind }) => kind === "styles")?.path;
  const strings = relations.find(({ kind }) => kind === "sharedStrings")?.path;
  const isMovedAbout = structure.steps.some((step) => step.do === "block");
  const allStrings = () => (strings && parts.has(strings) ? sharedStringsOf(read(textOf(parts, strings))) : []);
  const shared = seeds.length || isMovedAbout ? allStrings() : [];
  const pool = stylesPath && parts.has(stylesPath) ? new LookPool(textOf(parts, stylesPath)) : undefined;
  /** Whether lines of a sheet moved: what lies in groups of lines is hidden with them, and the engine counts these otherwise. */
  const isStill = structure.steps.length === 0;
  const removed = new Map<string, Set<string>>();
  const rulesOf = new Map([...pairs].map(([id, pair]) => [id, ruleChanges(pair, structure.touched)]));
  const made = await madeRules(
    [...rulesOf].map(([id, { colors, typing }]) => ({ id, conditionalFormats: [...colors.came], dataValidationRules: [...typing.came] })),
    now,
    engine,
  );

  for (const [id, pair] of pairs) {
    const path = paths.get(id)!;
    const xml = textOf(parts, path);
    const looks = cellLookChanges(pair, before, now, (format) => stored(beside.looks, format));
    const own = changes.get(id)!;
    const dirtyHere = [...dirty.values()].filter(({ sheetId }) => sheetId === id);
    let text = xml;
    if (own.length || dirtyHere.length || looks.size) {
      const rows = rowsOf(xml, shared);
      const edits = cellEdits({ id, rows }, own, dirtyHere, {
        model,
        engine,
        around,
        written: spell,
        unsure,
        mark: () => dynamicMark(parts, book.path),
      });
      const chained = new Set(own.filter((address) => edits.get(address)?.formula === null));
      if (chained.size) removed.set(path, chained);
      withResultFormats(model, id, own, looks, (format) => stored(beside.looks, format));
      const base = looks.size && lookAt(xml, rows);
      for (const [address, change] of looks)
        if (base && pool) edits.set(address, { ...edits.get(address), look: pool.like(base(address), change) } as Edit);
      text = withEdits(xml, edits, rows);
    }
    const rules = rulesOf.get(id)!;
    const place = places.get(path) ?? { rules: {}, validations: {} };
    text = withColors(text, pair, rules.colors, place.rules, made(id).rules, (look) => pool?.ofRule(look) ?? 0);
    text = withTyping(text, rules.typing, place.validations, made(id).validations);
    if (structure.touched.includes(touchKey(id, groupsKey))) text = withGroups(text, pair);
    text = withTab(withView(withMerges(withColumns(withRows(text, pair, isStill), pair, isStill), pair), pair), pair);
    if (text !== xml) parts.set(path, encoded(text));
    const links = new Map(
      own
        .filter((address) => targetOf(pair.before?.cells[address]) !== targetOf(pair.now.cells[address]))
        .map((address) => [address, isLink(pair.now.cells[address]) ? String(pair.now.cells[address]) : undefined]),
    );
    const linked = withLinks(parts, path, text, links, (other) => now.sheets.find((one) => one.id === other)?.name);
    if (linked !== text) parts.set(path, encoded(linked));
  }
  const rangeNames = new Set(Object.keys(now.namedRanges ?? {}).map((name) => name.toLowerCase()));
  for (const [id, own] of changes) {
    const other = new Set(own);
    if (withTables(book, paths.get(id)!, pairs.get(id)!, rangeNames)) {
      agreeHeaders(book, paths.get(id)!, allStrings(), () => false);
      continue;
    }
    if (!other.size && !isMovedAbout) continue;
    agreeHeaders(book, paths.get(id)!, shared, (address) => !isMovedAbout && !other.has(address));
    agreeTotals(parts, paths.get(id)!, shared, (address) => other.has(address));
  }
  if (pool?.isChanged) parts.set(stylesPath!, encoded(pool.written()));

  const renames = new Map<string, string>();
  const hidden = new Map<string, boolean>();
  for (const [id, { before: old, now: own }] of pairs) {
    const path = paths.get(id)!;
    const name = book.sheets.find((one) => one.path === path)!.name;
    if (engineSheet(name) !== own.name) renames.set(path, own.name);
    const relation = relations.find((one) => one.path === path)?.id ?? relationsOf(parts, book.path).find((one) => one.path === path)?.id;
    if (relation && (old?.isVisible ?? true) !== own.isVisible) hidden.set(relation, !own.isVisible);
  }
  if (renames.size) renameSheets(book, renames);
  orderSheets(
    book,
    now.sheets.flatMap(({ id }) => paths.get(id) ?? []),
  );
  const workbookXml = textOf(parts, book.path);
  const named = withHidden(withNames(workbookXml, before.namedRanges, now.namedRanges), hidden);
  if (named !== workbookXml) parts.set(book.path, encoded(named));
  withDocuments(parts, book.path, beside.documents);
  chain(book, structure, removed);

  if (isSame(parts, came)) return beside.file;
  const file = zipped(parts);
  const flaw = flawOf(file, came);
  if (flaw) throw new NotWhole(flaw);
  return file;
}

/** Nothing was changed: then the file is the file. */
const isSame = (a: Parts, b: Parts): boolean => a.size === b.size && [...a].every(([path, bytes]) => sameBytes(bytes, b.get(path)));

/** Number formats that came with the results of new formulas become their cells' own. */
function withResultFormats(
  model: Model,
  sheetId: string,
  changed: readonly string[],
  looks: Map<string, LookChange>,
  spelt: (format: string) => string,
): void {
  const { getters } = model;
  for (const address of changed) {
    const { row, column } = atOf(address);
    const position = { sheetId, row, col: column };
    if (!getters.getCell(position)?.isFormula) continue;
    const zone = getters.getSpreadZone(position) ?? blockOf(address);
    for (let down = zone.top; down <= zone.bottom; down++)
      for (let right = zone.left; right <= zone.right; right++) {
        const one = { sheetId, row: down, col: right };
        const { format, type } = getters.getEvaluatedCell(one);
        const key = addressOf({ row: down, column: right });
        if (
          !format ||
          type === "error" ||
          getters.getCell(one)?.format ||
          looks.get(key)?.format !== undefined ||
          !isOfResult(model, one, format)
        )
          continue;
        looks.set(key, { ...looks.get(key), format: spelt(format) });
      }
  }
}

function chain({ parts, path, sheets }: Book, { steps }: Structure, removed: ReadonlyMap<string, ReadonlySet<string>>): void {
  const numbers = new Map<number, string>();
  const relations = new Map(relationsOf(parts, path).map(({ id, path: part }) => [id, part]));
  for (const [tag] of textOf(parts, path).matchAll(/<(?:\w+:)?sheet\s[^>]*>/g)) {
    const part = relations.get(relationIn(tag));
    if (part && sheets.some((one) => one.path === part)) numbers.set(Number(/\ssheetId="(\d+)"/.exec(tag)?.[1]), part);
  }
  if (!steps.length && !removed.size) return;
  withoutChain(parts, path, (address, sheet) => removed.get(numbers.get(sheet) ?? "")?.has(address) ?? false, steps.length > 0);
}

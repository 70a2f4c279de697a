import type * as OSpreadsheet from "@odoo/o-spreadsheet";
import type { Model } from "@odoo/o-spreadsheet";
import { atOf, blockOf } from "../../../shared/xlsx/address";
import { type FileRow, rowsOf, sharedStringsOf } from "../../../shared/xlsx/cells";
import { addDocuments, documentsOf } from "../../../shared/xlsx/documents";
import { type Edit, withEdits } from "../../../shared/xlsx/edits";
import { LookPool } from "../../../shared/xlsx/looks";
import { dynamicMark } from "../../../shared/xlsx/metadata";
import { withinSheet, withoutReferences } from "../../../shared/xlsx/move";
import { relationsOf, textOf } from "../../../shared/xlsx/parts";
import { rowless } from "../../../shared/xlsx/rowless";
import { engineSheet } from "../../../shared/xlsx/sheetname";
import { orderSheets, renameSheets } from "../../../shared/xlsx/sheets";
import { agreeHeaders } from "../../../shared/xlsx/tableheaders";
import { agreeTotals } from "../../../shared/xlsx/tabletotals";
import { type Parts, unzip } from "../../../shared/xlsx/unzip";
import { flawOf, NotWhole, sameBytes } from "../../../shared/xlsx/whole";
import { encoded, read } from "../../../shared/xlsx/xml";
import { zipped } from "../../../shared/xlsx/zip";
import { sharedBookOf } from "../../book";
import type { Beside } from "../beside/workbook";
import { unknownOf } from "../formulas/known";
import { baseline, type Open } from "./baseline";
import { withHidden, withNames } from "./booknames";
import { cellLookChanges } from "./celllooks";
import { type Engine as Cells, cellEdits, formulaAt } from "./cells";
import { chain } from "./chain";
import { Dependents, unknownIn } from "./dependents";
import { contentChanges, type Pair } from "./difference";
import { groupsKey, withGroups } from "./groups";
import { withColumns, withRows } from "./lines";
import { isLink, targetOf, withLinks } from "./links";
import { lookAt } from "./lookat";
import { madeRules } from "./made";
import { sheetCell } from "./place";
import { cutTo, withMerged } from "./reach";
import { replayed } from "./replayed";
import { withResultFormats } from "./resultlooks";
import { ruleChanges, withColors, withTyping } from "./rules";
import { withMerges, withTab, withView } from "./sheetview";
import { spelling } from "./spelt";
import { reachIn, structureIn, touchKey } from "./structure";
import { withTables } from "./tables";

export type Engine = Pick<typeof OSpreadsheet, "Model" | "DEFAULT_LOCALE"> & Cells;

type Position = OSpreadsheet.CellPosition;

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
export async function written(
  model: Model,
  beside: Beside & { readonly file: Uint8Array },
  engine: Engine,
  open: Open,
): Promise<Uint8Array> {
  const { getters } = model;
  const structure = structureIn(model);
  const came = unzip(beside.file);
  const { book, paths, resized } = replayed(came, structure);
  const { parts } = book;
  const renames = new Map<string, string>();
  for (const [id, path] of paths) {
    const [was, is] = [book.sheets.find((one) => one.path === path)!.name, getters.getSheetName(id)];
    if (engineSheet(was) !== is) renames.set(path, is);
  }
  // Before anything is compared: what only says the new name is no other formula.
  if (renames.size) renameSheets(book, renames);
  const order = () =>
    orderSheets(
      book,
      getters.getSheetIds().flatMap((id) => paths.get(id) ?? []),
    );
  const mergedOn = (id: string) => {
    const xml = rowless(textOf(parts, paths.get(id) ?? ""));
    const there = [...xml.matchAll(/<(?:\w+:)?mergeCell\s[^>]*?\bref="([^"]*)"/g)].map(([, ref]) => blockOf(ref));
    return [...there, ...getters.getMerges(id)];
  };
  const reach = new Map(
    [...reachIn(structure, getters.getSheetIds())].map(([id, blocks]) => [id, blocks && withMerged(blocks, mergedOn(id))]),
  );
  if (!reach.size) {
    order();
    withDocuments(parts, book.path, beside.documents);
    return finished(parts, came, beside.file);
  }
  const relations = relationsOf(parts, book.path);
  const strings = relations.find(({ kind }) => kind === "sharedStrings")?.path;
  const allStrings = () => (strings && parts.has(strings) ? sharedStringsOf(read(textOf(parts, strings))) : []);
  const shared = allStrings();
  const known = new Map<string, readonly FileRow[]>();
  const rowsAt = (path: string) => {
    if (!known.has(path)) known.set(path, rowsOf(textOf(parts, path), shared));
    return known.get(path)!;
  };
  const all = sharedBookOf(model, reach).book;
  // The page may change while this goes on.
  const now = structuredClone({ ...all, sheets: all.sheets.map((sheet) => cutTo(sheet, reach.has(sheet.id) ? reach.get(sheet.id) : [])) });
  const { before, places } = baseline(book, paths, reach, rowsAt, open, engine);

  const pairs = new Map<string, Pair>();
  for (const sheet of now.sheets)
    if (paths.has(sheet.id))
      pairs.set(sheet.id, { now: sheet, before: reach.has(sheet.id) ? before.sheets.find(({ id }) => id === sheet.id) : sheet });
  const at = (sheetId: string, address: string): Position => ({ sheetId, row: atOf(address).row, col: atOf(address).column });

  const around = {
    names: new Set(getters.getNamedRanges().map(({ name }) => name.toLowerCase())),
    sheets: new Set(getters.getSheetIds().map((id) => getters.getSheetName(id).toLowerCase())),
  };
  const isUnknown = (text: unknown) => typeof text === "string" && text.startsWith("=") && unknownOf(text, engine, around) !== undefined;
  // The engine moves no reference of a formula that it does not know, and others past the last row: the file's own, moved here, is right.
  const isMoved = (old: unknown, own: unknown) => {
    if (!structure.steps.length || typeof old !== "string" || typeof own !== "string" || !own.startsWith("=")) return false;
    const fit = withinSheet(own);
    return (fit !== own || isUnknown(own)) && withoutReferences(old) === withoutReferences(fit);
  };
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
  const unknown = graph ? unknownIn(model, engine, around) : [];
  const unsure = new Set([...(graph?.of(unknown) ?? new Map()).keys(), ...unknown.map(sheetCell)]);

  const typed = new Map(
    [...changes].map(([id, addresses]) => [
      id,
      new Map(addresses.flatMap((address) => [[address, formulaAt(model, at(id, address)) ?? ""] as const]).filter(([, text]) => text)),
    ]),
  );
  const spell = await spelling(typed, now, engine);

  const stylesPath = relations.find(({ kind }) => kind === "styles")?.path;
  const isMovedAbout = structure.steps.some((step) => step.do === "block");
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
      const rows = rowsAt(path);
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

  const hidden = new Map<string, boolean>();
  for (const [id, { before: old, now: own }] of pairs) {
    const path = paths.get(id)!;
    const relation = relations.find((one) => one.path === path)?.id ?? relationsOf(parts, book.path).find((one) => one.path === path)?.id;
    if (relation && (old?.isVisible ?? true) !== own.isVisible) hidden.set(relation, !own.isVisible);
  }
  order();
  const workbookXml = textOf(parts, book.path);
  const named = withHidden(withNames(workbookXml, before.namedRanges, now.namedRanges), hidden);
  if (named !== workbookXml) parts.set(book.path, encoded(named));
  withDocuments(parts, book.path, beside.documents);
  chain(book, structure, removed);
  return finished(parts, came, beside.file);
}

/** The parts as a file, read again before it is given; where nothing was changed, the file is the file. */
function finished(parts: Parts, came: Parts, file: Uint8Array): Uint8Array {
  if (parts.size === came.size && [...parts].every(([path, bytes]) => sameBytes(bytes, came.get(path)))) return file;
  const made = zipped(parts);
  const flaw = flawOf(made, came);
  if (flaw) throw new NotWhole(flaw);
  return made;
}

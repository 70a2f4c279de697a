import { sheetKey } from "./sheetname";
import { type Parts, Unreadable } from "./unzip";
import { allOf, childrenOf, decoded, isTrue, read } from "./xml";

/** A part that another refers to. */
export interface Relation {
  readonly id: string;
  /** The last word of its type: "worksheet", "customXml". */
  readonly kind: string;
  readonly path: string;
  /** The target as written: a URL for an external one. */
  readonly target: string;
  readonly outside: boolean;
}

export interface SheetPart {
  readonly name: string;
  readonly path: string;
}

export interface DefinedName {
  readonly name: string;
  readonly text: string;
  /** The sheet that a local name belongs to. */
  readonly sheet?: string;
}

/** A workbook file: its parts, and where in them the sheets are. */
export interface Workbook {
  readonly parts: Parts;
  readonly path: string;
  readonly sheets: readonly SheetPart[];
  readonly names: readonly DefinedName[];
}

export const textOf = (parts: Parts, path: string): string => decoded(parts.get(path) ?? new Uint8Array());

/** A target as another part names it: beside that part, or from the root. */
function resolved(target: string, from: string): string {
  const steps = target.startsWith("/") ? [] : from.split("/").slice(0, -1);
  for (const step of target.split("/")) {
    if (step === "..") steps.pop();
    else if (step && step !== ".") steps.push(step);
  }
  return steps.join("/");
}

/** The name of the relation that an element goes by: its `r:id`, whatever the prefix; "" where it has none. */
export const relationIn = (tag: string): string => /\s\w+:id\s*=\s*["']([^"']*)/.exec(tag)?.[1] ?? "";

export const relationsPath = (path: string): string => path.replace(/([^/]*)$/, "_rels/$1.rels");

export function relationsOf(parts: Parts, path: string): Relation[] {
  const file = relationsPath(path);
  if (!parts.has(file)) return [];
  return childrenOf(read(textOf(parts, file)), "Relationship").map(({ attributes }) => ({
    id: attributes.Id ?? "",
    kind: (attributes.Type ?? "").replace(/^.*\//, ""),
    path: resolved(attributes.Target ?? "", path),
    target: attributes.Target ?? "",
    outside: attributes.TargetMode === "External",
  }));
}

const workbookPath = (parts: Parts): string | undefined => relationsOf(parts, "").find(({ kind }) => kind === "officeDocument")?.path;

/** Where the sheets with cells are, whatever else may be said of the workbook. */
export const sheetPaths = (parts: Parts): string[] =>
  relationsOf(parts, workbookPath(parts) ?? "").flatMap(({ kind, path }) => (kind === "worksheet" && parts.has(path) ? [path] : []));

const others: readonly [test: (parts: Parts) => boolean, words: string][] = [
  [(parts) => textOf(parts, "mimetype").includes("opendocument"), "it is an OpenDocument file: save it as .xlsx first"],
  [(parts) => [...parts.keys()].some((path) => /workbook\.bin$/.test(path)), "it is a binary workbook (.xlsb): save it as .xlsx first"],
];

/** No program can tell two sheets of one name apart. */
function refuseDoubles(sheets: readonly SheetPart[]): void {
  const names = new Set<string>();
  const paths = new Set<string>();
  for (const { name, path } of sheets) {
    if (!name.trim()) throw new Unreadable("one of its sheets has no name: give it one first");
    if (names.has(sheetKey(name))) throw new Unreadable(`two of its sheets are called ${name}: rename one of them first`);
    if (paths.has(path)) throw new Unreadable("two of its sheets are one and the same: save it again in your spreadsheet program");
    names.add(sheetKey(name));
    paths.add(path);
  }
}

/** Finds the sheets of a package. */
export function workbookOf(parts: Parts): Workbook {
  for (const [test, words] of others) if (test(parts)) throw new Unreadable(words);
  const path = workbookPath(parts);
  if (!path || !parts.has(path)) throw new Unreadable("it is not a workbook");
  const root = read(textOf(parts, path));
  if (allOf(root, "workbookPr").some(({ attributes }) => isTrue(attributes.date1904)))
    throw new Unreadable("it counts its days from 1904, so every date would be four years off: switch it to the 1900 date system first");
  const relations = relationsOf(parts, path);
  const listed = allOf(root, "sheet").map(({ attributes }) => {
    const id = Object.entries(attributes).find(([name]) => /:id$/.test(name))?.[1];
    const relation = relations.find((one) => one.id === id);
    return { name: attributes.name ?? "", path: relation?.path ?? "", kind: relation?.kind };
  });
  const names = allOf(root, "definedName").map((element) => {
    const place = element.attributes.localSheetId;
    return {
      name: element.attributes.name ?? "",
      text: element.text,
      sheet: place === undefined ? undefined : listed[Number(place)]?.name,
    };
  });
  // Chart sheets and dialog sheets hold no cells.
  const sheets = listed.filter((sheet) => sheet.kind === "worksheet" && parts.has(sheet.path));
  if (!sheets.length) throw new Unreadable("it is not a workbook: there is no sheet in it");
  refuseDoubles(sheets);
  return { parts, path, sheets, names };
}

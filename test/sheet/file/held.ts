import type { XmlElement } from "@rgrove/parse-xml";
import { type Relation, relationsOf, textOf, type Workbook, workbookOf } from "../../../shared/xlsx/parts";
import { sharedStringsOf } from "../../../shared/xlsx/strings";
import { unzip } from "../../../shared/xlsx/unzip";
import { allOf, childOf, childrenOf, nameOf, read } from "../../../shared/xlsx/xml";
import { cellsIn, type Facts, has, linesOf, type Styles, said, stylesOf } from "./heldcells";

/** What a file holds, as an independent reader of its parts sees it: two files can be compared by it, whatever wrote them. */

const listed = (range: string): string => range.split(" ").sort().join(" ");

/** Columns one by one, with their widths. */
const widthsOf = (root: XmlElement): Facts =>
  Object.fromEntries(
    childrenOf(childOf(root, "cols") ?? root, "col").flatMap(({ attributes: { min, max, width, hidden } }) =>
      Array.from({ length: Number(max) - Number(min) + 1 }, (_, i) => [
        Number(min) + i,
        `${width}${hidden === "1" || hidden === "true" ? " hidden" : ""}`,
      ]),
    ),
  );

const heightsOf = (root: XmlElement): Facts =>
  Object.fromEntries(
    childrenOf(childOf(root, "sheetData") ?? root, "row").flatMap(({ attributes: { r, ht, hidden } }) =>
      ht || hidden === "1" ? [[r, `${ht}${hidden === "1" ? " hidden" : ""}`]] : [],
    ),
  );

const plainLine = ({ attributes, ...element }: XmlElement, leave: readonly string[]): Facts => {
  const formulas = childrenOf(element as XmlElement).map((child) => [nameOf(child), child.text.trim()]);
  return Object.fromEntries([...Object.entries(attributes).filter(([name, value]) => !leave.includes(name) && value !== "0"), ...formulas]);
};

function rulesOf(root: XmlElement, styles: Styles): Facts[] {
  const rules = childrenOf(root, "conditionalFormatting").flatMap((block) =>
    childrenOf(block, "cfRule").map((rule) => ({
      over: listed(block.attributes.sqref),
      ...plainLine(rule, ["dxfId", "priority", "stopIfTrue"]),
      as: rule.attributes.dxfId && styles.rule(Number(rule.attributes.dxfId)),
      rank: Number(rule.attributes.priority),
    })),
  );
  return rules.sort((a, b) => a.rank - b.rank).map(({ rank: _, ...rule }) => rule);
}

/** The text of each note by its cell. */
const notesOf = ({ parts }: Workbook, relations: readonly Relation[]): Facts =>
  Object.fromEntries(
    relations
      .filter(({ kind }) => kind === "comments")
      .flatMap(({ path }) => allOf(read(textOf(parts, path)), "comment").map((note) => [note.attributes.ref, note.text.trim()])),
  );

const placeOf = (anchor: XmlElement | undefined) =>
  anchor &&
  childrenOf(anchor)
    .map(({ text }) => text)
    .join(" ");

function chartsOf({ parts }: Workbook, relations: readonly Relation[]): Facts[] {
  return relations
    .filter(({ kind }) => kind === "drawing")
    .flatMap(({ path }) => {
      const within = relationsOf(parts, path);
      return childrenOf(read(textOf(parts, path))).map((anchor) => {
        const id = allOf(anchor, "chart")[0]?.attributes["r:id"];
        const target = within.find((relation) => relation.id === id);
        const { descr, name } = allOf(anchor, "cNvPr")[0].attributes;
        const chart = target && read(textOf(parts, target.path));
        return {
          from: placeOf(childOf(anchor, "from")),
          to: placeOf(childOf(anchor, "to")),
          moves: anchor.attributes.editAs,
          name,
          alt: descr,
          chart: chart && childOf(chart, "chart") && said(childOf(chart, "chart")!),
        };
      });
    });
}

const tablesOf = ({ parts }: Workbook, relations: readonly Relation[]): Facts[] =>
  relations
    .filter(({ kind }) => kind === "table")
    .map(({ path }) => {
      const root = read(textOf(parts, path));
      const { displayName, name, ref } = root.attributes;
      const columns = childrenOf(childOf(root, "tableColumns")!).map(({ attributes }) => attributes.name);
      return { displayName, name, ref, columns, style: linesOf(root, "tableStyleInfo"), filters: has(root, "autoFilter") };
    });

function sheetOf(workbook: Workbook, path: string, strings: readonly string[], styles: Styles): Facts {
  const root = read(textOf(workbook.parts, path));
  const relations = relationsOf(workbook.parts, path);
  const within = (list: string, name: string) => childrenOf(childOf(root, list) ?? root, name);
  const view = within("sheetViews", "sheetView")[0];
  const pane = view && childOf(view, "pane")?.attributes;
  return {
    cells: cellsIn(textOf(workbook.parts, path), root, strings, styles),
    validations: within("dataValidations", "dataValidation")
      .map((one) => ({ ...plainLine(one, []), sqref: listed(one.attributes.sqref) }))
      .sort((a, b) => (a.sqref < b.sqref ? -1 : 1)),
    rules: rulesOf(root, styles),
    merges: within("mergeCells", "mergeCell")
      .map(({ attributes }) => attributes.ref)
      .sort(),
    widths: widthsOf(root),
    heights: heightsOf(root),
    usual: linesOf(root, "sheetFormatPr"),
    pane: pane && [pane.xSplit, pane.ySplit, pane.topLeftCell, pane.state],
    gridLines: view?.attributes.showGridLines,
    properties: linesOf(root, "sheetPr"),
    protection: linesOf(root, "sheetProtection"),
    links: within("hyperlinks", "hyperlink")
      .map(({ attributes: { ref, location, tooltip } }) => `${ref} ${location} ${tooltip}`)
      .sort(),
    print: ["printOptions", "pageMargins", "pageSetup", "headerFooter", "rowBreaks", "colBreaks"].flatMap((name) => linesOf(root, name)),
    notes: notesOf(workbook, relations),
    charts: chartsOf(workbook, relations),
    tables: tablesOf(workbook, relations),
  };
}

export interface Held {
  readonly sheets: Readonly<Record<string, Facts>>;
  readonly names: readonly string[];
  readonly properties: readonly string[];
  readonly documents: readonly string[];
}

/** Names of sheets stand in quotes or without them, which is the same. */
const unquoted = (text: string): string => text.replace(/'((?:[^']|'')*)'!/g, "$1!");

export function held(file: Uint8Array): Held {
  const workbook = workbookOf(unzip(file));
  const { parts, path, sheets, names } = workbook;
  const relations = relationsOf(parts, path);
  const part = (kind: string) => relations.find((one) => one.kind === kind)?.path ?? "";
  const strings = parts.has(part("sharedStrings")) ? sharedStringsOf(read(textOf(parts, part("sharedStrings")))) : [];
  const styles = stylesOf(read(textOf(parts, part("styles"))));
  const core = relationsOf(parts, "").find(({ kind }) => kind === "core-properties")?.path;
  return {
    sheets: Object.fromEntries(sheets.map((sheet) => [sheet.name, sheetOf(workbook, sheet.path, strings, styles)])),
    names: names.map(({ name, sheet, text }) => `${sheet ?? ""} ${name} ${unquoted(text)}`).sort(),
    properties: core
      ? childrenOf(read(textOf(parts, core)))
          .filter((one) => nameOf(one) !== "modified")
          .map(said)
          .sort()
      : [],
    documents: relations.filter(({ kind }) => kind === "customXml").map((one) => textOf(parts, one.path)),
  };
}

/** Two programs reckon the same number to the last digit but one. */
const near = (a: unknown, b: unknown) => typeof a === "number" && typeof b === "number" && Math.abs(a - b) <= 1e-9 * Math.abs(a);

/** Where two things differ, in words: the place, then what was there and what is. */
export function differences(before: unknown, after: unknown, place = ""): string[] {
  if (Object.is(before, after) || near(before, after)) return [];
  if (typeof before !== "object" || typeof after !== "object" || !before || !after) {
    return [`${place}: ${JSON.stringify(before)} is ${JSON.stringify(after)}`];
  }
  const keys = new Set([...Object.keys(before), ...Object.keys(after)]);
  return [...keys].flatMap((key) => differences((before as Facts)[key], (after as Facts)[key], `${place}/${key}`));
}

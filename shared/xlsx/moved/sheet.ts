import { blockOf, sizeOf } from "../address";
import { rowsOf } from "../cells";
import { type Move, most, movedBlock, movedEnds, movedFormula } from "../move";
import { retagged } from "../retag";
import { rowless } from "../rowless";
import { scan, type Tag } from "../scan";
import { type Change, changed, escaped } from "../xml";
import { movedCells } from "./cells";
import { movedRanges, shifts } from "./ranges";

export interface MovedSheet {
  readonly xml: string;
  readonly resized: readonly string[];
}

/** Attributes that hold cell references. */
const places = ["ref", "sqref", "activeCell", "topLeftCell"];
/** Elements that go when all their cells are deleted; others keep their old reference. */
const rooted = new Set([
  ...["mergeCell", "conditionalFormatting", "dataValidation", "hyperlink", "protectedRange", "ignoredError", "autoFilter", "sortState"],
  ...["sortCondition", "cellWatch", "inputCells"],
]);
/** Elements whose text is a formula, or lists ranges. */
const formulas = new Set(["formula", "formula1", "formula2", "f", "calculatedColumnFormula", "totalsRowFormula"]);
const listed = new Set(["mergeCells", "dataValidations", "hyperlinks", "protectedRanges", "ignoredErrors", "rowBreaks", "colBreaks"]);

interface Open {
  readonly tag: Tag;
  text: string;
  hasChildren: boolean;
  /** Nothing of it is left. */
  gone: boolean;
  children: number;
  left: number;
}

/** The changed attributes of an element after a move; undefined where the element goes. */
function movedAttributes(
  tag: Tag,
  parent: Tag | undefined,
  own: string,
  move: Move,
  here: boolean,
): Record<string, string | number> | undefined {
  const set: Record<string, string | number> = {};
  const put = (name: string, value: string | number) => {
    if (String(value) !== tag.attribute(name)) set[name] = value;
  };
  const location = tag.local === "hyperlink" ? tag.attribute("location") : undefined;
  if (location) put("location", movedFormula(location, own, move).formula);
  const limit = tag.local === "cfvo" && tag.attribute("type") === "formula" ? tag.attribute("val") : undefined;
  if (limit) put("val", movedFormula(limit, own, move).formula);
  if (!here) return set;
  for (const name of tag.local === "cellWatch" || tag.local === "inputCells" ? ["r"] : places) {
    const value = tag.attribute(name);
    if (!value) continue;
    const moved = movedRanges(value, move);
    if (moved) put(name, moved);
    else if (rooted.has(tag.local)) return undefined;
  }
  const merged = tag.local === "mergeCell" && set.ref;
  if (merged && sizeOf(blockOf(String(merged))) < 2) return undefined;
  if (move.kind !== "lines") return set;
  const { axis, at, by } = move;
  if (tag.local === "brk" && parent?.local === (axis === "row" ? "rowBreaks" : "colBreaks")) {
    const ends = movedEnds(Number(tag.attribute("id")), Number(tag.attribute("id")), at, by, most[axis]);
    if (!ends) return undefined;
    put("id", ends[0]);
  }
  if (tag.local === "col" && axis === "column") {
    const ends = movedEnds(Number(tag.attribute("min")) - 1, Number(tag.attribute("max")) - 1, at, by, most.column);
    if (!ends) return undefined;
    put("min", ends[0] + 1);
    put("max", ends[1] + 1);
  }
  return set;
}

/** Everything of a sheet's part but its cells. */
function movedAround(xml: string, own: string, move: Move): Change[] {
  const here = shifts(own, move);
  const changes: Change[] = [];
  const path: Open[] = [];
  const emptied: { start: number; end: number }[] = [];
  let filtered: string | undefined;
  // Rows are moved elsewhere.
  scan(rowless(xml), {
    open(tag) {
      const parent = path.at(-1);
      const one: Open = { tag, text: "", hasChildren: false, gone: false, children: 0, left: 0 };
      if (parent) {
        parent.hasChildren = true;
        parent.children++;
      }
      path.push(one);
      const set = movedAttributes(tag, parent?.tag, own, move, here);
      if (!set) one.gone = true;
      if (tag.local === "autoFilter") filtered = tag.attribute("ref");
      if (tag.local === "filterColumn" && here && move.kind === "lines" && move.axis === "column" && filtered) {
        const left = blockOf(filtered).left;
        const column = left + Number(tag.attribute("colId"));
        const ends = movedEnds(column, column, move.at, move.by, most.column);
        const block = movedBlock(blockOf(filtered), move);
        if (!ends || !block) one.gone = true;
        else if (ends[0] - block.left !== Number(tag.attribute("colId"))) changes.push(retagged(xml, tag, { colId: ends[0] - block.left }));
      }
      if (set && Object.keys(set).length) changes.push(retagged(xml, tag, set));
    },
    text(text) {
      const one = path.at(-1);
      if (one) one.text += text;
    },
    close(tag, end) {
      const one = path.pop()!;
      const parent = path.at(-1);
      const { local, open, closed, start } = tag;
      const isText = !one.hasChildren && !closed && one.text.trim() !== "";
      const closing = isText ? xml.lastIndexOf("</", end - 1) : 0;
      if (isText && formulas.has(local)) {
        const { formula } = movedFormula(one.text, own, move);
        if (formula !== one.text) changes.push({ start: open, end: closing, text: escaped(formula) });
      } else if (isText && local === "sqref" && here) {
        const ranges = movedRanges(one.text, move);
        if (!ranges && parent) parent.gone = true;
        else if (ranges !== one.text) changes.push({ start: open, end: closing, text: ranges });
      }
      // An empty list is removed, and the count attribute of others is updated.
      if (listed.has(local) || (local === "sparklines" && one.children)) {
        if (one.children && !one.left) one.gone = true;
        else if (one.left < one.children && tag.attribute("count")) changes.push(retagged(xml, tag, { count: one.left }));
      }
      if (one.gone) emptied.push({ start, end });
      else if (parent) parent.left++;
    },
  });
  // Changes inside a removed element are dropped.
  const gone = emptied.filter(
    (one) => !emptied.some((other) => other !== one && other.start <= one.start && other.end >= one.end && other.start !== one.start),
  );
  const kept = changes.filter(({ start }) => !gone.some((one) => start >= one.start && start < one.end));
  return [...kept, ...gone.map(({ start, end }) => ({ start, end, text: "" }))];
}

/** Blocks of form controls stand in a sheet's own part, as pictures do in a drawing. */
export function movedSheet(xml: string, own: string, move: Move): MovedSheet {
  const { changes, resized } = movedCells(xml, own, move, rowsOf(xml, []));
  return { xml: changed(xml, [...changes, ...movedAround(xml, own, move)]), resized };
}

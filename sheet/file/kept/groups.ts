import { rowsOf } from "../../../shared/xlsx/cells";
import { elementOf, prefixOf, sheetRoot, withElement } from "../../../shared/xlsx/elements";
import { type Attributes, retagged } from "../../../shared/xlsx/retag";
import { childOf, childrenOf, isTrue, read } from "../../../shared/xlsx/xml";
import type { Pair, SheetData } from "./difference";
import { columnsTagged, rowsTagged } from "./linetags";

/** Under which key a sheet whose groups were made or undone stands among what was touched. */
export const groupsKey = "groups of rows and columns";

type Dimension = "ROW" | "COL";
type Groups = NonNullable<SheetData["headerGroups"]>["ROW"];

/** As deep as a file can say. */
const deepest = 7;

const groupsOf = (sheet: SheetData | undefined, dimension: Dimension): Groups => sheet?.headerGroups?.[dimension] ?? [];
const isFolded = (group: Groups[number]): boolean => group.isFolded ?? false;
const around = (groups: Groups, line: number): Groups => groups.filter(({ start, end }) => line >= start && line <= end);

/** Lines that stand in more or in fewer groups than before, or are folded or not any more, with what their tags now say. `levelAt` is how deep the file has them. */
function changes(pair: Pair, dimension: Dimension, levelAt: (line: number) => number, isAfter: boolean): Map<number, Attributes> {
  const [before, now] = [groupsOf(pair.before, dimension), groupsOf(pair.now, dimension)];
  const lines = new Set([...before, ...now].flatMap(({ start, end }) => Array.from({ length: end - start + 1 }, (_, i) => start + i)));
  const found = new Map<number, Attributes>();
  for (const line of lines) {
    const [was, is] = [around(before, line), around(now, line)];
    const set: Attributes = {};
    // Groups that begin and end together are one to the engine.
    if (was.length !== is.length)
      set.outlineLevel = is.length ? Math.min(deepest, Math.max(1, levelAt(line) + is.length - was.length)) : undefined;
    if (was.some(isFolded) && !is.some(isFolded)) set.hidden = undefined;
    if (is.some(isFolded) && !was.some(isFolded)) set.hidden = 1;
    if (Object.keys(set).length) found.set(line, set);
  }
  // The line beside a folded group says that it is folded.
  for (const one of before)
    if (isFolded(one) && !now.some((other) => other.start === one.start && other.end === one.end && isFolded(other)))
      for (const line of [one.start - 1, one.end + 1]) if (line >= 0) found.set(line, { ...found.get(line), collapsed: undefined });
  const folded = new Set(before.filter(isFolded).map(({ start, end }) => `${start} ${end}`));
  for (const { start, end } of now.filter(isFolded)) {
    const line = isAfter ? end + 1 : start - 1;
    if (!folded.has(`${start} ${end}`) && line >= 0) found.set(line, { ...found.get(line), collapsed: 1 });
  }
  return found;
}

const levelIn = ({ attributes: { outlineLevel } }: { attributes: Record<string, string> }) => Number(outlineLevel ?? 0);

/** How deep a sheet's groups go: a program makes room for them by it. */
function withDepth(xml: string): string {
  const root = sheetRoot(xml);
  const prefix = prefixOf(root);
  const set = {
    outlineLevelRow: Math.max(0, ...rowsOf(xml, []).map(({ level }) => level)) || undefined,
    outlineLevelCol: Math.max(0, ...childrenOf(childOf(root, "cols") ?? root, "col").map(levelIn)) || undefined,
  };
  const own = elementOf(xml, "sheetFormatPr") ?? `<${prefix}sheetFormatPr defaultRowHeight="15"/>`;
  const open = own.indexOf(">") + 1;
  return withElement(xml, "sheetFormatPr", retagged(own, { start: 0, open }, set).text + own.slice(open));
}

/** Groups of rows and columns that were made or undone, in the lines' own tags. */
export function withGroups(xml: string, pair: Pair): string {
  const levels = new Map(rowsOf(xml, []).map(({ row, level }) => [row, level]));
  const runs = childrenOf(childOf(sheetRoot(xml), "cols") ?? read("<cols/>"), "col");
  const columnLevel = (line: number) => {
    const run = runs.find(({ attributes: { min, max } }) => line >= Number(min) - 1 && line <= Number(max) - 1);
    return run ? levelIn(run) : 0;
  };
  const outline = childOf(childOf(sheetRoot(xml), "sheetPr") ?? read("<sheetPr/>"), "outlinePr")?.attributes;
  const isAfter = (says: string | undefined) => says === undefined || isTrue(says);
  const rows = changes(pair, "ROW", (line) => levels.get(line) ?? 0, isAfter(outline?.summaryBelow));
  const columns = changes(pair, "COL", columnLevel, isAfter(outline?.summaryRight));
  return rows.size || columns.size ? withDepth(columnsTagged(rowsTagged(xml, rows), columns)) : xml;
}

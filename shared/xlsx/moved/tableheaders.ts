import { type At, addressOf, blockOf } from "../address";
import { type FileCell, rowsOf } from "../cells";
import { type Edit, withEdits } from "../edits";
import { put } from "../package";
import { relationsOf, textOf } from "../parts";
import { elementRetagged } from "../retag";
import { storedOf } from "../storedvalue";
import { type Change, changed, childOf, childrenOf, escaped, read, unescaped } from "../xml";
import type { Book } from "./bookparts";
import { speakOf } from "./columns";
import { freeColumn } from "./tables";

/**
 * The names of a table's columns stand twice in a file: in the cells above them, as text, and in the table's own part. A program
 * offers to repair a file where the two differ. ECMA-376-1 18.5.1.3 (tableColumn); that they must agree: common practice, no source.
 */

/** Names are told apart without regard to large and small, and are no longer than this. */
const longest = 255;
const small = (name: string) => name.toLowerCase();

/** An attribute's text: line ends would become spaces. */
const attribute = (name: string) => escaped(name).replace(/\n/g, "_x000a_").replace(/\t/g, "_x0009_");

const textIn = (cell: FileCell | undefined): string =>
  (cell?.type === "b" ? (cell.value === "1" ? "TRUE" : "FALSE") : (cell?.value ?? "")).replace(/\r\n?/g, "\n").slice(0, longest);

const isText = (cell: FileCell | undefined) => cell !== undefined && !cell.formula && (cell.type === "s" || cell.type === "inlineStr");

/** A name that no other column has. */
function free(text: string, taken: ReadonlySet<string>): string {
  if (!text.trim()) return freeColumn(taken);
  let name = text;
  for (let n = 2; taken.has(small(name)); n++) name = `${text.slice(0, longest - 4)}${n}`;
  return name;
}

interface Renamed {
  readonly xml: string;
  readonly edits: ReadonlyMap<string, Edit>;
  readonly columns: ReadonlyMap<string, string>;
}

function renamed(xml: string, cellAt: (at: At) => FileCell | undefined, isOld: (address: string) => boolean): Renamed {
  const root = read(xml);
  const { top, left } = blockOf(root.attributes.ref ?? "A1");
  const columns = childrenOf(childOf(root, "tableColumns") ?? root, "tableColumn");
  const names = columns.map((column) => unescaped(column.attributes.name ?? "").replace(/\r\n?/g, "\n"));
  const cells = columns.map((_, i) => cellAt({ row: top, column: left + i }));
  const agrees = (i: number) => isText(cells[i]) && textIn(cells[i]) === names[i];
  const stays = columns.map((_, i) => agrees(i) || isOld(addressOf({ row: top, column: left + i })));
  const taken = new Set(names.filter((_, i) => stays[i]).map(small));
  const edits = new Map<string, Edit>();
  const changes: Change[] = [];
  const other = new Map<string, string>();
  for (const [i, column] of columns.entries()) {
    if (stays[i]) continue;
    const name = free(textIn(cells[i]), taken);
    taken.add(small(name));
    if (!isText(cells[i]) || textIn(cells[i]) !== name)
      edits.set(addressOf({ row: top, column: left + i }), { stored: { ...storedOf(name), type: "inlineStr" }, formula: null });
    if (name === names[i]) continue;
    other.set(small(names[i]), name);
    const tag = elementRetagged(xml, column, {});
    changes.push({ ...tag, text: tag.text.replace(/(\sname\s*=\s*)(?:"[^"]*"|'[^']*')/, (_, is) => `${is}"${attribute(name)}"`) });
  }
  return { xml: changed(xml, changes), edits, columns: other };
}

/** The cells and the columns of a sheet's tables brought to agree; `isOld` tells which headers are as they came. */
export function agreeHeaders(book: Book, sheet: string, strings: readonly string[], isOld: (address: string) => boolean): void {
  const { parts } = book;
  const tables = relationsOf(parts, sheet).filter(({ kind, path }) => kind === "table" && parts.has(path));
  if (!tables.length) return;
  const cells = new Map(rowsOf(textOf(parts, sheet), strings).flatMap((row) => row.cells.map((cell) => [cell.address, cell] as const)));
  for (const { path } of tables) {
    const xml = textOf(parts, path);
    const { attributes } = read(xml);
    if (attributes.headerRowCount === "0") continue;
    const made = renamed(xml, (at) => cells.get(addressOf(at)), isOld);
    if (made.edits.size) put(parts, sheet, withEdits(textOf(parts, sheet), made.edits));
    if (made.xml === xml) continue;
    put(parts, path, made.xml);
    speakOf(book, { table: attributes.displayName ?? "", columns: made.columns }, { path: sheet, block: blockOf(attributes.ref ?? "A1") });
  }
}

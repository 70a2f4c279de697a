import { type Arg, isBlank } from "./argument";
import type { Cells } from "./columns";
import { Trouble } from "./outcome";
import { readTyped } from "./typed";
import { plainUnits, type Units } from "./unit";

/** Tables as people type them: a line a row. */

const us = plainUnits("US");

/** Whether a line of it has several cells. */
export const isParted = ({ example }: Arg): boolean => Array.isArray(example) && Array.isArray(example[0]);

/** The columns of an argument that is a table; one for a plain range. */
const columnsOf = (arg: Arg): readonly unknown[] => (isParted(arg) ? (arg.example as unknown[][])[0] : [arg.example]);

const thousands = /^\s*[+-]?\d{1,3}(,\d{3})+(\.\d+)?\s*$/;

/** Commas within a part separate cells too where they can be nothing else: "1,5" and "1,500" are left whole, for the argument to refuse. */
const isSeveral = (part: string): boolean => !thousands.test(part) && (part.split(",").length > 2 || /,.*\.|\..*,/.test(part));

/** The cells of a line. Tabs, semicolons and commas before a space part them; other commas where the columns then suffice. */
export function partsOf(line: string, arg: Arg): string[] {
  const parts = line.split(/\t|;|,(?=\s)/);
  const finer = parts.flatMap((part) => (isSeveral(part) ? part.split(",") : [part]));
  return (finer.length <= columnsOf(arg).length ? finer : parts).map((part) => part.trim());
}

/** A line to type, where plain numbers are what the example takes them for. */
export function exampleLine(arg: Arg, units: Units): string {
  const plain = (Object.keys(us) as (keyof Units)[]).every((kind) => units[kind] === us[kind]);
  return plain ? `such as ${columnsOf(arg).join(", ")}` : "";
}

/** Numbers of the lines that say something. */
export const filledLines = (text: string): number[] => text.split(/\r?\n/).flatMap((line, i) => (line.trim() ? [i + 1] : []));

const isNumber = (cell: unknown): boolean => typeof cell === "number" || (typeof cell === "string" && readTyped(cell) !== undefined);

interface Unread {
  readonly index: number;
  readonly trouble: Trouble;
}

/** Rows that a table could not read stay in what it made of them. */
function unreadIn(made: unknown): Unread[] {
  const lines: unknown[] = Array.isArray(made) ? made : Object.values(made as object).flat();
  return lines.filter((line): line is Unread => (line as Partial<Unread> | undefined)?.trouble instanceof Trouble);
}

/** The first row that cannot be read, and why: a table passes it over, and whoever typed it wants to know. */
export function firstUnread(arg: Arg, cells: Cells, units: Units): Unread | undefined {
  if (columnsOf(arg).length < 2 || cells.flat().every(isBlank)) return undefined;
  // Words over numbers are headings; a row with a number in it, or the only row, is no heading.
  const headed = cells.length > 1 && !cells[0].some(isNumber);
  const rows = headed ? cells : [columnsOf(arg).map(() => "heading"), ...cells];
  const shift = headed ? 0 : 1;
  const [first] = unreadIn(arg.take!(rows, units))
    .map(({ index, trouble }) => ({ index: index - shift, trouble }))
    .filter(({ index }) => index >= 0)
    .sort((a, b) => a.index - b.index);
  return first;
}

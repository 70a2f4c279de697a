import { type Arg, isBlank, isEmpty } from "./argument";
import { capital } from "./capital";
import type { Cells } from "./columns";
import { type Contract, parameters, shopArg } from "./contract";
import { literalOf } from "./formula";
import { type Cell, said, sayIn, Trouble } from "./outcome";
import type { Setting, Shop } from "./settings";
import { exampleLine, filledLines, firstUnread, isParted, partsOf } from "./table";
import { fromInternal, type Units } from "./unit";

/** An argument as a form shows it. */
export interface Field {
  readonly name: string;
  readonly arg: Arg;
  readonly label: string;
  /** One line, several lines of cells, or one of a few words. */
  readonly control: "line" | "lines" | "choice";
  readonly choices: readonly string[];
  readonly required: boolean;
  /** What a plain number is taken for; "" where it has no unit. */
  readonly unit: string;
  /** Hints, one line each: what to type, the range, and the value if left out. */
  readonly hints: readonly string[];
}

/** What a field holds: what was typed, or cells of the sheet by their reference. */
export type Entry =
  | { readonly typed: string; readonly reference?: undefined }
  | { readonly reference: string; readonly cells: Cells; readonly typed?: undefined };

export type Entries = Readonly<Record<string, Entry | undefined>>;

const isSetting = (arg: Arg): arg is Setting => "fallback" in arg;

const sayValue = (arg: Arg, value: unknown, units: Units): string =>
  arg.kind && typeof value === "number" ? sayIn(units, said(arg.kind, value)) : String(value);

/** Above this, in plain units, a limit only catches mistakes and is not shown. */
const endless = 1e5;

function rangeHint({ kind, range }: Arg, units: Units): string {
  if (!kind || kind === "date" || !range) return "";
  const [least, most] = range.map((end) => sayIn(units, said(kind, end)));
  if (fromInternal(range[1], units[kind]) < endless) return `from ${least} to ${most}`;
  return range[0] > 0 ? `${least} or more` : "";
}

function leftOut(arg: Arg, shop: Shop): string {
  if (!arg.optional) return "";
  if (isSetting(arg)) {
    const value = shop.get(arg);
    return value === undefined ? "" : `if left out: the shop's ${arg.name}, ${sayValue(arg, value, shop.units)}`;
  }
  return arg.otherwise === undefined ? "optional" : `left out: ${sayValue(arg, arg.otherwise, shop.units)}`;
}

function fieldOf(name: string, arg: Arg, shop: Shop): Field {
  const control = arg.choices ? "choice" : Array.isArray(arg.example) || (arg.take && !arg.say) ? "lines" : "line";
  const parted = isParted(arg);
  const sample = Array.isArray(arg.example)
    ? `a line each, with ${arg.sample(shop.units).replace("rows of ", "")}${parted ? ", a comma and a space between them" : ""}`
    : "";
  const such = arg.choices || sample ? "" : arg.sample(shop.units).replace(/^a (value|date) /, "");
  return {
    name,
    arg,
    label: capital(arg.label),
    control,
    choices: arg.choices ?? [],
    required: !arg.optional,
    unit: arg.kind ? shop.units[arg.kind].name : "",
    hints: [
      sample || such,
      parted ? exampleLine(arg, shop.units) : "",
      control === "lines" && !sample ? "a line each" : "",
      rangeHint(arg, shop.units),
      leftOut(arg, shop),
    ].filter(Boolean),
  };
}

/** The form of a function: a field an argument. Which shop it counts for is asked once, for all forms. */
export const fieldsOf = (contract: Contract, shop: Shop): Field[] =>
  parameters(contract)
    .filter(([, arg]) => arg !== shopArg)
    .map(([name, arg]) => fieldOf(name, arg, shop));

/** Text of a plain number becomes a number; all other text is left for the argument to read. */
const cellOf = (typed: string): Cell => (/^[+-]?(\d+\.?\d*|\.\d+)$/.test(typed) ? Number(typed) : typed);

const isTable = ({ arg }: Pick<Field, "arg">) => Array.isArray(arg.example);

function typedCells(field: Field, typed: string): Cells | undefined {
  const text = typed.trim();
  if (!text) return undefined;
  if (field.control !== "lines") return [[cellOf(text)]];
  const lines = text.split(/\r?\n/).filter((line) => line.trim());
  if (!isTable(field)) return lines.flatMap((line) => line.split(";")).map((cell) => [cellOf(cell.trim())]);
  const rows = lines.map((line) => partsOf(line, field.arg).map(cellOf));
  const widest = Math.max(...rows.map((row) => row.length));
  return rows.map((row) => [...row, ...Array<Cell>(widest - row.length).fill("")]);
}

/** The cells of a field, as a spreadsheet would hand them in. */
export function cellsOf(field: Field, entry: Entry | undefined): Cells | undefined {
  if (!entry) return undefined;
  return entry.reference === undefined ? typedCells(field, entry.typed) : entry.cells;
}

/** The same, with zeros resolved: 0 from the sheet may be a blank cell, 0 typed into the form is a number. */
export function meantOf(field: Field, entry: Entry | undefined): Cells | undefined {
  const cells = cellsOf(field, entry);
  return entry?.typed === undefined ? cells : cells?.map((row) => row.map((cell) => (cell === 0 ? "0" : cell)));
}

/** The first typed line of a table that cannot be read, by its number. */
function lineTrouble({ arg }: Field, entry: Entry | undefined, cells: Cells, units: Units): string | undefined {
  if (entry?.typed === undefined || !isTable({ arg })) return undefined;
  const unread = firstUnread(arg, cells, units);
  return unread && `line ${filledLines(entry.typed)[unread.index]}: ${unread.trouble.in(units).message}`;
}

export const isMany = (cells: Cells | undefined): boolean => cells !== undefined && cells.flat().length > 1;

/** What is wrong with a field by itself; a column's rows each answer for themselves. */
export function troubleOf(field: Field, entry: Entry | undefined, units: Units): string | undefined {
  const cells = meantOf(field, entry);
  if (!cells || (!field.arg.take && isMany(cells))) return undefined;
  try {
    if (field.arg.take) {
      if (!cells.flat().every(isBlank)) field.arg.take(cells, units);
    } else if (!isEmpty(cells[0][0], field.arg, units)) field.arg.read(cells[0][0], units);
    return lineTrouble(field, entry, cells, units);
  } catch (trouble) {
    if (trouble instanceof Trouble) return trouble.in(units).message;
    throw trouble;
  }
}

/** A message without the name of its field, to show right under it. */
export function underField({ arg }: Field, message: string): string {
  const lead = `${arg.label}: `;
  return message.startsWith(lead) ? capital(message.slice(lead.length)) : capital(message);
}

/** Whether a message is about this field: it then begins with the field's own words. */
export const isAbout = ({ name, arg }: Field, message: string): boolean =>
  [arg.label, name].some((word) => message.toLowerCase().startsWith(word.toLowerCase()));

export const isMissing = (field: Field, entry: Entry | undefined): boolean =>
  field.required && (cellsOf(field, entry)?.flat().every(isBlank) ?? true);

/** The call as it is typed into a cell: references as they are, what was typed as text and numbers. */
export function formulaOf(cellName: string, fields: readonly Field[], entries: Entries, shop: string | undefined): string {
  const parts = fields.map((field) => {
    const entry = entries[field.name];
    if (entry?.reference !== undefined) return entry.reference;
    const cells = cellsOf(field, entry);
    if (!cells) return "";
    return literalOf(cells.length === 1 && cells[0].length === 1 ? cells[0][0] : cells);
  });
  const all = shop === undefined ? parts : [...parts, shop];
  while (all.at(-1) === "") all.pop();
  return `=${cellName}(${all.join(",")})`;
}

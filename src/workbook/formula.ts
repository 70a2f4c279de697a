import { type Contract, parameters } from "../../shared/contract";
import { twinFormula } from "../../shared/twin";
import type { Units } from "../../shared/unit";
import { namesIn } from "../../shared/working";
import { namespace } from "../catalogue";

/** A place in the book. Rows and columns count from 0; whoever lays a sheet out sets it. */
export interface Place {
  readonly sheet: string;
  readonly row: number;
  readonly column: number;
}

/** A cell or block that formulas speak of before anybody knows its address. */
export interface Ref {
  /** Set when the sheet is laid out. */
  readonly first: () => Place;
  readonly last: () => Place;
  /** Where a formula is copied down a column, the row of it that stands beside the formula. */
  readonly beside?: (row: number) => Ref;
}

type Piece = string | number | Ref | Ask;

/** Built-in spreadsheet syntax with references and questions in it. */
export interface Formula {
  readonly text: readonly string[];
  readonly pieces: readonly Piece[];
}

/** formula`SUM(${blanks.uptake})` */
export const formula = (text: TemplateStringsArray, ...pieces: Piece[]): Formula => ({ text: [...text], pieces });

/** One of our functions, asked about cells. */
export interface Ask {
  readonly contract: Contract;
  readonly given: Readonly<Record<string, Ref | number | string>>;
}

export const ask = (contract: Contract, given: Ask["given"]): Ask => ({ contract, given });

const isAsk = (piece: Piece): piece is Ask => typeof piece === "object" && "contract" in piece;

export function columnName(column: number): string {
  const letter = String.fromCharCode(65 + (column % 26));
  return column < 26 ? letter : columnName(Math.floor(column / 26) - 1) + letter;
}

export const address = ({ row, column }: Place, fixed = false): string =>
  fixed ? `$${columnName(column)}$${row + 1}` : `${columnName(column)}${row + 1}`;

const quoted = (sheet: string): string => (/^\w+$/.test(sheet) ? sheet : `'${sheet.replace(/'/g, "''")}'`);

/** A reference as a formula on a sheet writes it; from another sheet it stays where it is when rows are copied. */
export function refText(ref: Ref, from: string): string {
  const first = ref.first();
  const last = ref.last();
  const away = first.sheet !== from;
  const ends = first.row === last.row && first.column === last.column ? [first] : [first, last];
  const text = ends.map((place) => address(place, away)).join(":");
  return away ? `${quoted(first.sheet)}!${text}` : text;
}

const literal = (value: number | string): string => (typeof value === "number" ? String(value) : `"${value.replace(/"/g, '""')}"`);
const isRef = (piece: unknown): piece is Ref => typeof piece === "object" && piece !== null && "first" in piece;

/** How one edition writes a question: with the function, or with its twin in built-in syntax. */
export interface Edition {
  /** undefined where this edition has no formula for it. */
  write(ask: Ask, from: string, row: number | undefined): string | undefined;
  /** A column is one formula a row, and not one that spills. */
  readonly rowByRow?: boolean;
}

/** The name under which files keep a function of an add-in. */
export const storedName = (name: string): string => `_xldudf_${namespace}_${name}`;

/** Formulas that call the functions; `shop` is the range of settings. */
export const live = (shop: Ref, name = storedName): Edition => ({
  write({ contract, given }, from) {
    const all = parameters(contract).map(([key]) => {
      const value = key === "shop" ? (given.shop ?? shop) : given[key];
      return value === undefined ? "" : isRef(value) ? refText(value, from) : literal(value);
    });
    while (all.length && all.at(-1) === "") all.pop();
    return `${name(contract.name)}(${all.join(",")})`;
  },
});

/** Formulas for a program without the functions: twins, where a contract has one; settings by the cells that hold them. */
export const plain = (units: Units, settingCell: (name: string) => Ref | undefined): Edition => ({
  rowByRow: true,
  write({ contract, given }, from, row) {
    if (!contract.twin) return undefined;
    const cells: Record<string, string> = {};
    for (const key of namesIn(contract.twin)) {
      const arg = contract.args[key];
      const setting = (arg && "name" in arg ? arg.name : contract.shop?.[key]?.name) as string | undefined;
      const value = given[key] ?? (setting ? settingCell(setting) : undefined) ?? arg?.otherwise;
      if (value === undefined) return undefined;
      const ref = isRef(value) && row !== undefined ? (value.beside?.(row) ?? value) : value;
      cells[key] = isRef(ref) ? refText(ref, from) : literal(ref as number | string);
    }
    return twinFormula(contract, cells, units);
  },
});

/** A formula as one edition writes it on a sheet; undefined where a question in it has none there. */
export function written({ text, pieces }: Formula, edition: Edition, from: string, row?: number): string | undefined {
  let out = text[0];
  for (const [i, piece] of pieces.entries()) {
    const part = isAsk(piece)
      ? edition.write(piece, from, row)
      : isRef(piece)
        ? refText(row === undefined ? piece : (piece.beside?.(row) ?? piece), from)
        : String(piece);
    if (part === undefined) return undefined;
    out += part + text[i + 1];
  }
  return out;
}

/** A condition that is true where the row a formula speaks of is not filled in; undefined where the formula has no columns. */
export function blankRow({ pieces }: Formula, from: string, row: number): string | undefined {
  const asked = pieces.find(isAsk);
  if (!asked) return undefined;
  const beside = Object.entries(asked.given).flatMap(([key, value]) => {
    const own = isRef(value) && !asked.contract.args[key]?.optional ? value.beside?.(row) : undefined;
    return own ? [`${refText(own, from)}=""`] : [];
  });
  return beside.length > 1 ? `AND(${beside.join(",")})` : beside[0];
}

import { type Arg, isBlank, optional, quantity, count as whole } from "../../shared/argument";
import { type Cell, isFault, type Trouble } from "../../shared/outcome";
import { readTyped } from "../../shared/typed";
import type { Units } from "../../shared/unit";
import { rows } from "../../shared/whole";
import { text } from "../../shared/words";
import { pieceSides } from "../chamber/arrange";
import type { Piece } from "../chamber/layers";
import { woodArg } from "../wood/wood";
import { attempt, isTrouble } from "./attempt";
import { colorArg } from "./color";

/** The pieces of one row, all alike. */
export interface Row extends Piece {
  readonly label: string;
  /** Index of its row in the range. */
  readonly index: number;
  readonly count: number;
  /** Oven-dry. */
  readonly gravity: number;
  /** As typed; "" is a color of its own. */
  readonly color: string;
  /** How full its pores get, where the row says so. */
  readonly fullness?: number;
}

/** A row that cannot be planned, and why. */
export interface Unplanned {
  readonly label: string;
  readonly index: number;
  readonly trouble: Trouble;
}

export interface Pieces {
  readonly rows: readonly Row[];
  readonly unplanned: readonly Unplanned[];
}

const counted = whole("count", 12, [0, 1e6]);

/** A fullness of 0 counts as blank: some spreadsheets hand blank cells in as 0. */
const fullnessArg = quantity("share", "fullness", 0.6, [0.001, 1.05]);

export const isHeading = (count: Cell): boolean => typeof count === "string" && !isBlank(count) && !readTyped(count);

const isNone = (count: Cell): boolean => count === 0 || (typeof count === "string" && readTyped(count)?.number === 0);

/** Longest name, in characters: a load lists the names of its pieces in one cell. */
const longestLabel = 250;

const labelOf = (cell: Cell, index: number): string => {
  const none = isBlank(cell) || isFault(cell) || (typeof cell === "number" && !Number.isFinite(cell));
  return none ? `row ${index + 1}` : String(cell).trim().slice(0, longestLabel);
};

/** Names of woods repeat down a list: each is looked up once, known or not. */
function lookedUpOnce<T>(wood: Arg<T>): Arg<T> {
  const known = new Map<Cell, T | Trouble>();
  return {
    ...wood,
    read: (cell, units) => {
      const found = known.get(cell) ?? attempt(() => wood.read(cell, units));
      known.set(cell, found);
      if (isTrouble(found)) throw found;
      return found;
    },
  };
}

const table = () =>
  rows("pieces", {
    label: optional(text("label", "maple")),
    count: counted,
    ...pieceSides,
    wood: lookedUpOnce(woodArg),
    color: optional(colorArg),
    fullness: optional(fullnessArg),
  });

/** Blank cells that came in as 0 in the columns that may be left out. */
const blanked = (cells: readonly Cell[]): readonly Cell[] =>
  cells[6] === 0 || cells[7] === 0 ? cells.map((cell, i) => (i > 5 && cell === 0 ? "" : cell)) : cells;

function take(cells: readonly (readonly Cell[])[], units: Units): Pieces {
  const lines = table().take!(cells.map(blanked), units);
  const filled = lines.filter(({ cells: [, count] }, i) => !(i === 0 && isHeading(count)) && !isNone(count));
  const read: Row[] = [];
  const unplanned: Unplanned[] = [];
  for (const { cells, index, given, trouble } of filled) {
    const label = labelOf(cells[0], index);
    if (given) {
      const { wood, thickness, width, length, count, color = "", fullness } = given;
      read.push({ thickness, width, length, count, gravity: wood.gravity, label, index, color, fullness });
    } else unplanned.push({ label, index, trouble });
  }
  return { rows: read, unplanned };
}

/** The pieces to plan: label, count, thickness, width, length, gravity or species, color, fullness; headings, empty rows and counts of 0 are passed over. */
export const piecesArg: Arg<Pieces> = {
  ...table(),
  label: "pieces: label, count, thickness, width, length, gravity or species, color, fullness",
  example: [["maple", 12, 0.75, 0.75, 5, "silver maple"]],
  read: (cell, units) => take([[cell]], units),
  take,
  say: ({ rows: { length }, unplanned }: Pieces) => (length + unplanned.length === 1 ? "1 row" : `${length + unplanned.length} rows`),
};

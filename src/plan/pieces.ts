import { type Arg, isBlank, optional, count as whole } from "../../shared/argument";
import { type Cell, isFault, type Trouble } from "../../shared/outcome";
import { readTyped } from "../../shared/typed";
import type { Units } from "../../shared/unit";
import { rows } from "../../shared/whole";
import { text } from "../../shared/words";
import { pieceSides } from "../chamber/arrange";
import type { Piece } from "../chamber/layers";
import { woodArg } from "../wood/wood";
import { attempt, isTrouble } from "./attempt";

/** Pieces of one row: so many alike. */
export interface Row extends Piece {
  readonly label: string;
  /** Where it stood in the range. */
  readonly index: number;
  readonly count: number;
  /** Oven-dry. */
  readonly gravity: number;
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

const isHeading = (count: Cell): boolean => typeof count === "string" && !isBlank(count) && !readTyped(count);

const isNone = (count: Cell): boolean => count === 0 || (typeof count === "string" && readTyped(count)?.number === 0);

/** A name, not a story: loads list the names of their pieces in one cell. */
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

const table = () => rows("pieces", { label: optional(text("label", "maple")), count: counted, ...pieceSides, wood: lookedUpOnce(woodArg) });

function take(cells: readonly (readonly Cell[])[], units: Units): Pieces {
  const lines = table().take!(cells, units);
  const filled = lines.filter(({ cells: [, count] }, i) => !(i === 0 && isHeading(count)) && !isNone(count));
  const read: Row[] = [];
  const unplanned: Unplanned[] = [];
  for (const { cells, index, given, trouble } of filled) {
    const label = labelOf(cells[0], index);
    if (given) {
      const { wood, ...piece } = given;
      read.push({ ...piece, gravity: wood.gravity, label, index });
    } else unplanned.push({ label, index, trouble });
  }
  return { rows: read, unplanned };
}

/** The pieces to plan: label, count, thickness, width, length, gravity or species; headings, empty rows and counts of 0 are passed over. */
export const piecesArg: Arg<Pieces> = {
  ...table(),
  label: "pieces: label, count, thickness, width, length, gravity or species",
  read: (cell, units) => take([[cell]], units),
  take,
  say: ({ rows: { length }, unplanned }: Pieces) => (length + unplanned.length === 1 ? "1 row" : `${length + unplanned.length} rows`),
};

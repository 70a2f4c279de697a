import { type Arg, isBlank, isEmpty } from "../../shared/argument";
import { cellNumber, missing } from "../../shared/message";
import { badInput, type Cell, handedOn, isFault, Trouble } from "../../shared/outcome";
import type { Units } from "../../shared/unit";

/** A range as handed in, with the argument that reads its numbers: whether words in a cell are a fault depends on the cell beside it. */
export interface Standing {
  readonly label: string;
  readonly each: Arg<number>;
  readonly cells: readonly Cell[];
  readonly units: Units;
}

/** A row, a column or a block, read along its lines. */
export function standing(label: string, each: Arg<number>): Arg<Standing> {
  const take = (cells: readonly (readonly Cell[])[], units: Units): Standing => ({ label, each, cells: cells.flat(), units });
  return {
    label,
    example: [each.example],
    sample: (units) => `cells with ${label}, each ${each.sample(units)}`,
    read: (cell, units) => take([[cell]], units),
    take,
    say: ({ cells }: Standing) => `${cells.filter((cell) => !isBlank(cell)).length} filled cells`,
  };
}

/** Text with a currency sign is meant as a number, whatever stands beside it. */
const priced = /^\s*[-+]?\s*(?:\p{Sc}\s*[-+]?[\d.,]+|[\d.,]+\s*\p{Sc})\s*$/u;

/** The number of a cell, the trouble with its words, or undefined where it is blank. */
function look({ each, cells, units }: Standing, i: number): number | Trouble | undefined {
  const cell = cells[i];
  if (isFault(cell)) throw handedOn(cell);
  if (isEmpty(cell, each, units)) return undefined;
  try {
    return each.read(cell, units);
  } catch (trouble) {
    if (!(trouble instanceof Trouble)) throw trouble;
    const told = trouble.about(cellNumber(i));
    if (typeof cell === "number" || (typeof cell === "string" && priced.test(cell))) throw told;
    return told;
  }
}

/** What stands in the other range's cell where this one holds a number that counts. */
function refuse({ each, units }: Standing, i: number, found: Trouble | undefined): never {
  throw found ?? missing(each.label, each.sample(units)).about(cellNumber(i));
}

/**
 * Numbers of two ranges side by side. Blanks and words beside blanks and words are headings and gaps of somebody's own sheet;
 * so is a zero beside them, which is how some spreadsheets hand in a blank, and adds nothing.
 */
export function besides(a: Standing, b: Standing): (readonly [number, number])[] {
  if (a.cells.length !== b.cells.length)
    throw badInput`${a.label} are ${a.cells.length} cells and ${b.label} ${b.cells.length}: give the same number of each`;
  return a.cells.flatMap((_, i) => {
    const [x, y] = [look(a, i), look(b, i)];
    if (typeof x === "number" && typeof y === "number") return [[x, y] as const];
    if (typeof x === "number" && x !== 0) refuse(b, i, y as Trouble | undefined);
    if (typeof y === "number" && y !== 0) refuse(a, i, x as Trouble | undefined);
    return [];
  });
}

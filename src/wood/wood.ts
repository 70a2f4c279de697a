import type { Arg } from "../../shared/argument";
import { type Cell, said, sayIn } from "../../shared/outcome";
import { readTyped } from "../../shared/typed";
import { text } from "../../shared/words";
import { findSpecies, gravityAt, type Species } from "./species";
import { gravityArg } from "./voids";

/** A wood by its name in the tables or by the gravity of the piece. */
export interface Wood {
  /** Oven-dry specific gravity. */
  readonly gravity: number;
  readonly species?: Species;
}

const label = "wood: species or specific gravity";
const words = text(label, "silver maple");

const isNumber = (cell: Cell): boolean => typeof cell === "number" || (typeof cell === "string" && readTyped(cell)?.rest === "");

/** "white oak, 0.62": a species, and the gravity of this very piece by weight and size. */
const weighed = /^(.*[^\d\s,.])[\s,]+(\d*[.,]?\d+)$/;

/** A species, a number, or both. Of a piece that was weighed and measured, its gravity says more than its name. */
export const woodArg: Arg<Wood> = {
  label,
  example: "silver maple",
  sample: () => "a species such as silver maple, or a specific gravity such as 0.45",
  say: ({ gravity, species }: Wood, units) =>
    `${species ? `${species.name}, ` : ""}specific gravity ${sayIn(units, said("gravity", gravity))}`,
  read: (cell, units) => {
    if (isNumber(cell)) return { gravity: gravityArg.read(cell, units) };
    const typed = words.read(cell, units);
    const both = weighed.exec(typed);
    if (both) return { gravity: gravityArg.read(both[2].replace(",", "."), units), species: findSpecies(both[1]) };
    const species = findSpecies(typed);
    return { gravity: gravityAt(species, 0), species };
  },
};

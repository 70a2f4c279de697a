import { type Blank, blanks } from "../demo";
import { speciesNames } from "../wood/species";

/** A number of like pieces, and the weights of one of them. */
export interface Kind extends Blank {
  readonly count: number;
  readonly color: string;
}

/** Woods that go into the red resin; the others are dyed blue. */
const red = new Set(["river birch", "black cherry", "hackberry", "American beech", "sweetgum"]);

const known = new Set(speciesNames.map((name) => name.toLowerCase()));

/** A blank with a mistake has a row of its own, where its message shows. */
const isSlip = ({ species, weight, dryWeight }: Blank) =>
  !known.has(species.toLowerCase()) || weight < dryWeight || weight > dryWeight * 1.3;

const groupOf = (blank: Blank) => (isSlip(blank) ? blank.label : `${blank.condition} ${blank.species}`);

/** The hundred blanks of the demo as kinds: by wood and state, each measured by its first piece. */
export const kinds: readonly Kind[] = [...new Set(blanks.map(groupOf))].map((label) => {
  const [first, ...rest] = blanks.filter((blank) => groupOf(blank) === label);
  return { ...first, label, count: 1 + rest.length, color: red.has(first.species) ? "red" : "blue" };
});

import { indexed, otherNames, speciesNames } from "../../../../src/wood/species";
import { ask } from "../../../ask";
import { near } from "../../../within";
import { filled } from "../filled";

const woods = filled("Woods");

it("lists every wood known by name, with its gravity and voids", () => {
  const names = woods.under("wood", new Set([...speciesNames, ...otherNames]).size) as string[];
  expect(new Set(names)).toEqual(new Set([...speciesNames, ...otherNames]));
  const [gravity, voids] = ["gravity, dry", "voids"].map((title) => woods.under(title, names.length));
  for (const i of [0, 30, names.length - 1]) {
    near(gravity[i], ask("GRAVITY", names[i]) as number);
    near(voids[i], ask("VOIDS", gravity[i] as never) as number);
  }
});

it("goes on with the names as an index has them, so that the lists of other sheets take both", () => {
  const all = woods.under("wood", 400).filter((name) => name !== "" && name !== undefined);
  expect(new Set(all)).toEqual(new Set([...speciesNames, ...otherNames, ...speciesNames.map(indexed)]));
});

it("keeps its heading in sight, and repeats it on paper", () => {
  expect(woods.sheet.frozen?.rows).toBe(woods.sheet.print.titleRow! + 1);
});

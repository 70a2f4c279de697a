import { gravity } from "../../wood/gravity";
import { otherNames, speciesNames } from "../../wood/species";
import { voids } from "../../wood/voids";
import { ask } from "../formula";
import { Page } from "../page";
import { type Ref, whole } from "../place";

export interface Woods {
  readonly page: Page;
  /** Lists to look into. */
  readonly names: Ref;
  readonly gravity: Ref;
}

/** The woods that are known by name: the list that other sheets choose from. */
export function woodsSheet(): Woods {
  const page = new Page(
    "Woods",
    "Woods by name, with their oven-dry specific gravity (how dense) and the empty space in them.",
    [32, 14, 14, 30],
  );
  page.open("Woods");
  page.say(`${gravity.source}. ${gravity.accuracy[0].toUpperCase()}${gravity.accuracy.slice(1)}.`);
  page.skip();
  const { of } = page.table(
    {
      wood: { title: "wood", look: "label" },
      gravity: { title: "gravity, dry", format: "0.00", spills: ({ wood }) => ask(gravity, { species: wood }) },
      voids: { title: "voids", format: "0%", spills: (columns) => ask(voids, { gravity: columns.gravity }) },
    },
    [...speciesNames, ...otherNames].sort((a, b) => a.localeCompare(b, "en")).map((wood) => ({ wood })),
  );
  page.sheet.frozen = { rows: of.wood.row, columns: 0 };
  page.sheet.print = { titleRow: of.wood.row - 1, pages: 2 };
  return { page, names: whole(of.wood), gravity: whole(of.gravity) };
}

import { capital } from "../../../shared/capital";
import { gravity } from "../../wood/gravity";
import { indexed, otherNames, speciesNames, spellings } from "../../wood/species";
import { voids } from "../../wood/voids";
import { ask, type Formula, formula } from "../formula";
import { Page } from "../page";
import { type Ref, whole } from "../place";
import { sheetTable } from "../sheettable";

export interface Woods {
  readonly page: Page;
  /** Lookup lists. */
  readonly names: Ref;
  readonly gravity: Ref;
  /** The name that Woods has for a wood, however it is spelled: as GRAVITY takes it; nothing where it is none. */
  readonly named: (typed: Ref) => Formula;
}

/** Columns that go to paper. */
const printed = 4;

/** What is passed over in a spelling. */
const marks = [" ", "-", ",", ".", "'", "’"];

const bare = (typed: Ref): Formula =>
  marks.reduce<Formula>((made, mark) => formula`SUBSTITUTE(${made},"${mark}","")`, formula`LOWER(${typed})`);

const inOrder = (names: readonly string[]): string[] => [...new Set(names)].sort((a, b) => a.localeCompare(b, "en"));

/** The woods that are known by name: the list that other sheets choose from, and below it the same as an index has them. */
export function woodsSheet(): Woods {
  const page = new Page(
    "Woods",
    "Woods by name, with their oven-dry specific gravity (how dense) and the empty space in them.",
    [32, 14, 14, 30, 3, 22, 24],
    { columns: printed },
  );
  page.open("Woods");
  page.say(`${gravity.source}. ${capital(gravity.accuracy)}.`);
  page.skip();
  const top = page.row;
  const names = inOrder([...speciesNames, ...otherNames]);
  const index = inOrder(speciesNames.map(indexed)).filter((name) => !names.includes(name));
  const { of } = sheetTable(
    page,
    {
      wood: { title: "wood", look: "label" },
      gravity: { title: "gravity, dry", format: "0.00", spills: ({ wood }) => ask(gravity, { species: wood }) },
      voids: { title: "voids", format: "0%", spills: (columns) => ask(voids, { gravity: columns.gravity }) },
    },
    [...names, ...index].map((wood) => ({ wood })),
  );
  page.row = top;
  const { of: spelled } = sheetTable(
    page,
    { spelling: { title: "spelled", look: "note" }, name: { title: "is", look: "note" } },
    spellings.map(([spelling, name]) => ({ spelling, name })),
    { column: printed + 1 },
  );
  page.sheet.frozen = { rows: of.wood.row, columns: 0 };
  page.sheet.print = { ...page.sheet.print, titleRow: of.wood.row - 1, rows: of.wood.row + names.length };
  const named = (typed: Ref) =>
    formula`IF(${typed}="","",IFERROR(INDEX(${whole(spelled.name)},MATCH(${bare(typed)},${whole(spelled.spelling)},0)),""))`;
  return { page, names: whole(of.wood), gravity: whole(of.gravity), named };
}

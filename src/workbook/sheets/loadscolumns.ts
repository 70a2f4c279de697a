import type { Contract } from "../../../shared/contract";
import type { Kit } from "../kit";
import type { Page } from "../page";
import { briefDay, day, moment } from "./day";

/** The first moment of a load has its date; what follows within days has its day of the week. */
const brief = "ddd mm-dd hh:mm";
const later = "ddd hh:mm";

/** As the contract has them, days as short as they are clear, moments with their day of the week and without their year. */
export const formatsOf = ({ format }: Contract, kit: Kit): string[] =>
  Object.entries(format as Readonly<Record<string, string>>).map(([name, own]) =>
    own === day ? briefDay(kit) : own !== moment ? own : name === "in" ? brief : later,
  );

/** Columns of the plan, which go to paper; beyond them the likely bake, and then what only serves. */
export const planned = 17;
export const serving = { chart: planned + 1, list: 27, blanks: 31 };

/** All that is printed fits one page across and a screen of 1280 pixels; a clock of twelve hours takes more room, and leaves less for the pieces. */
export const widthsOf = (kit: Kit): number[] => {
  const clock = kit.by(13.1, 10.8);
  const fluid = kit.by(6.2, 6.5);
  const resin = [fluid, fluid, fluid, fluid, 8.4, 4.9];
  const load = [
    5,
    kit.by(14.6, 23.2),
    7.2,
    kit.by(6.5, 9.7),
    6.8,
    ...resin,
    kit.by(7.6, 11),
    kit.by(16.6, 16),
    clock,
    clock,
    8.4,
    clock,
    10,
  ];
  const chart = [8, 15, 8, 8, 8, 8, 3, 3, 3];
  const list = [27, 15, 8, 3];
  return [...load, ...chart, ...list, 21, 8, 9, 8, 8, 9, 8, 9];
};

/** The units of the plan's columns, which stand in no heading of the answer. */
export function unitsOver(page: Page, kit: Kit): void {
  const fluid = kit.unit("fluid");
  const units: Readonly<Record<number, string>> = {
    4: kit.unit("volume"),
    5: fluid,
    6: fluid,
    7: fluid,
    8: fluid,
    10: kit.unit("powder"),
    15: "min",
  };
  for (const [column, unit] of Object.entries(units)) page.put(page.row, Number(column), { value: unit, look: "unit" });
  page.row++;
}

import { outlineOf, readGiven } from "../../shared/given";
import { shopReader } from "../../shared/settings";
import { waysOf } from "../../src/chamber/layers";
import { plan } from "../../src/plan/plan";
import { type Plan, planOf } from "../../src/plan/planned";
import { schedule } from "../../src/plan/pulls";
import { settings } from "../../src/shop";
import records from "../published/packing.json";
import { fewestLoads, type Lot } from "./bound";

const lists = 30;
const tubs = [
  [6, 10],
  [8, 10],
  [12, 12],
] as const;

/** Numbers between 0 and 1 in step with nothing, and the same in every run. */
const noise = (list: number, row: number, which: number) => {
  const far = Math.sin(list * 12.9898 + row * 78.233 + which * 37.719) * 43758.5453;
  return far - Math.floor(far);
};

/** A list such as a shop has: a few woods, blanks of a few sizes, a hundred pieces or so. */
const listOf = (list: number) =>
  Array.from({ length: 8 }, (_, row) => {
    const side = 0.625 + Math.round(noise(list, row, 1) * 8) / 16;
    return [
      `row ${row + 1}`,
      5 + Math.floor(noise(list, row, 2) * 20),
      side,
      side * (noise(list, row, 3) < 0.7 ? 1 : 1.5),
      4 + Math.round(noise(list, row, 4) * 8) / 4,
      0.35 + noise(list, row, 5) * 0.3,
    ];
  });

const shop = shopReader(settings)(undefined);

function planned(list: number): { made: Plan; bound: number; fewest: number; earliest: number } {
  const [diameter, height] = tubs[list % tubs.length];
  const cells = [listOf(list), [[diameter]], [[height]], [["2026-03-16 08:00"]]] as never;
  const given = readGiven(outlineOf(plan), cells, shop).given as unknown as Parameters<typeof planOf>[0];
  const made = planOf(given);
  const { area, height: own } = made.tub;
  const volume = made.loads.reduce((sum, { stack }) => sum + stack.worth, 0);
  const room = own * (1 - given.foamRoom) - given.cover;
  const bound = Math.ceil(volume / (area * room));
  const lots = made.loads.flatMap(({ shares }) =>
    shares.map(({ part: { row }, count }): Lot => ({ sides: [row.thickness, row.width, row.length], count })),
  );
  const fewest = Math.ceil(fewestLoads(lots, { section: made.tub.section, height: room, gap: given.gap }) * (1 - 1e-9));
  // As many loads as the bound, of which only the vacuum, the soaking and one shortest batch take time.
  const batch = Math.min(...made.loads.flatMap(({ batches }) => batches));
  const jobs = Array.from({ length: bound }, () => ({ color: 0, need: 0, wrap: 0, batches: [batch] }));
  const pace = { loading: given.loadingMinutes, vacuum: given.vacuumHours, soak: given.soakHours };
  const times = schedule(jobs, 8 * 3600, made.clock, pace, made.tub, Number.POSITIVE_INFINITY, { least: 1, between: true });
  return { made, bound, fewest, earliest: Math.max(...times.map(({ done }) => done)) };
}

export interface Packed {
  /** Loads over the fewest that the volume allows, over those that gaps, heights and the round wall allow, and days over those that so many loads need; means of the lists. */
  readonly loads: number;
  readonly fewest: number;
  readonly days: number;
  /** Squares that the published records hold over ours, summed over all records. */
  readonly squares: number;
}

/** How good plans are, beside bounds that no plan can pass. */
export function packed(): Packed {
  const all = Array.from({ length: lists }, (_, list) => planned(list));
  const mean = (of: (one: (typeof all)[number]) => number) => all.reduce((sum, one) => sum + of(one), 0) / lists;
  const round = (records as { n: number; radius?: number }[]).filter(({ radius }) => radius !== undefined);
  const ours = round.map(
    ({ radius }) => waysOf({ shape: "round", diameter: 2 * radius! + 2e-9 }, 0, { thickness: 1, width: 1, length: 9 })[0].layer.pieces,
  );
  return {
    loads: mean(({ made, bound }) => made.loads.length / bound),
    fewest: mean(({ made, fewest }) => made.loads.length / fewest),
    days: mean(({ made, earliest }) => made.done! / earliest),
    squares: round.reduce((sum, { n }) => sum + n, 0) / ours.reduce((sum, n) => sum + n, 0),
  };
}

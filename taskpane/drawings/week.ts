import { svg } from "lit";
import type { Units } from "../../shared/unit";
import type { System } from "../../shared/unittable";
import { day, dayOf, slack } from "../../src/plan/clock";
import type { Plan, Planned } from "../../src/plan/planned";
import { type Drawing, paper, px } from "./drawing";
import { dayName, momentName } from "./moments";

/** An interval of time and the line it is drawn on. */
interface Bar {
  readonly lane: string;
  readonly mark: string;
  readonly from: number;
  readonly to: number;
  readonly name: string;
}

/** First and last day of a plan, counted from its first midnight. */
export const daysOf = ({ loads }: Plan): readonly [first: number, last: number] => [
  dayOf(Math.min(...loads.map(({ from }) => from))),
  dayOf(Math.max(...loads.map(({ done }) => done)) - 2 * slack),
];

/** "1", "1–3", "1, 4". */
function numbersIn(numbers: readonly number[]): string {
  const runs: number[][] = [];
  for (const number of [...numbers].sort((a, b) => a - b)) {
    const run = runs[runs.length - 1];
    if (run && run[run.length - 1] === number - 1) run.push(number);
    else runs.push([number]);
  }
  return runs.map((run) => (run.length > 1 ? `${run[0]}–${run[run.length - 1]}` : `${run[0]}`)).join(", ");
}

/** Lanes for the soaking loads, so that none overlap: each takes the first lane that is free. */
function soakLanes(loads: readonly Planned[]): number[] {
  const free: number[] = [];
  const lanes: number[] = new Array(loads.length);
  for (const i of loads.map((_, i) => i).sort((a, b) => loads[a].in - loads[b].in)) {
    const lane = free.findIndex((until) => until <= loads[i].in + slack);
    lanes[i] = lane < 0 ? free.length : lane;
    free[lanes[i]] = loads[i].out;
  }
  return lanes;
}

function barsOf({ loads }: Plan, vacuum: number): Bar[] {
  const lanes = soakLanes(loads);
  const pulls = new Map<number, number[]>();
  for (const [i, { pull }] of loads.entries()) pulls.set(pull, [...(pulls.get(pull) ?? []), i]);
  const hands = (from: number, to: number): Bar => ({ lane: "0", mark: "hands", from, to, name: "" });
  return [
    ...[...pulls.values()].flatMap((own): Bar[] => {
      const { from, in: begin } = loads[own[0]];
      const name = numbersIn(own.map((i) => i + 1));
      return [hands(from, begin), { lane: "1", mark: "vacuum", from: begin, to: begin + vacuum, name }];
    }),
    ...loads.flatMap(({ in: begin, out, wrapping, wrapped, starts, batches }, i): Bar[] => {
      const name = String(i + 1);
      return [
        { lane: `2.${String(lanes[i]).padStart(4, "0")}`, mark: "soaking", from: begin + vacuum, to: out, name },
        hands(out, out + Math.max(0, Math.min(wrapping, wrapped) - out)),
        hands(wrapping, wrapped),
        ...starts.map((at, batch): Bar => ({ lane: "3", mark: "baked", from: at, to: at + batches[batch], name })),
      ];
    }),
  ];
}

const label = 64;
const head = 16;
const lanesHigh: Readonly<Record<string, number>> = { hands: 6, vacuum: 14, soaking: 13, baked: 14 };
const hourNames: Readonly<Record<System, readonly string[]>> = {
  US: ["12 AM", "6 AM", "noon", "6 PM"],
  SI: ["00:00", "06:00", "12:00", "18:00"],
};

/** Seven days, an hour as wide on every line: hands at work, tubs under vacuum, soaking, and the oven; closed hours gray. */
export function weekDrawing(plan: Plan, from: number, vacuum: number, { system }: Units): Drawing {
  const { loads, clock } = plan;
  const [, last] = daysOf(plan);
  const bars = barsOf(plan, vacuum).filter((bar) => bar.to - bar.from > slack);
  const x = (share: number) => label + share * (paper - label - 2);
  let top = head;
  const lines = Array.from({ length: Math.min(7, last - from + 1) }, (_, i) => {
    const at = from + i;
    const begin = at * day;
    const mine = bars.filter((bar) => bar.from < begin + day - slack && bar.to > begin + slack);
    const lanes = [...new Map(mine.map(({ lane, mark }) => [lane, mark])).entries()].sort(([a], [b]) => (a < b ? -1 : 1));
    const places = new Map<string, number>();
    let tall = 3;
    for (const [lane, mark] of lanes) {
      places.set(lane, tall);
      tall += lanesHigh[mark] + 1;
    }
    const height = Math.max(22, tall + 2);
    const own = top;
    top += height + 2;
    const shade = (start: number, end: number) =>
      end > start ? svg`<rect class="night" x=${px(x(start))} y=${px(own)} width=${px(x(end) - x(start))} height=${px(height)} />` : "";
    const isOff = clock.closing(begin + clock.opens) < 0;
    const opens = clock.opens / day;
    const closes = (clock.opens + clock.hours) / day;
    return svg`${isOff ? shade(0, 1) : svg`${shade(0, opens)}${shade(closes, 1)}`}
      ${[0.25, 0.5, 0.75].map((share) => svg`<line class="grid" x1=${px(x(share))} x2=${px(x(share))} y1=${px(own)} y2=${px(own + height)} />`)}
      <text x="0" y=${px(own + 14)}>${dayName(plan, at, system)}</text>${isOff ? svg`<text x="0" y=${px(own + 25)}>closed</text>` : ""}
      ${mine.map(({ lane, mark, from: start, to: end, name }) => {
        const [left, right] = [x(Math.max(0, (start - begin) / day)), x(Math.min(1, (end - begin) / day))];
        const wide = Math.max(1.5, right - left);
        const y = own + places.get(lane)!;
        const high = lanesHigh[mark];
        return svg`<rect class=${mark} x=${px(left)} y=${px(y)} width=${px(wide)} height=${high} />
          ${name && wide > 5 * name.length + 3 ? svg`<text class=${`middle on-${mark}`} x=${px(left + wide / 2)} y=${px(y + high - 3.5)}>${name}</text>` : ""}`;
      })}`;
  });
  const hours = hourNames[system].map((name, i) => svg`<text class=${i ? "middle" : ""} x=${px(x(i / 4))} y="10">${name}</text>`);
  const told = loads.flatMap((load, i) => {
    if (load.done <= from * day || load.from >= (from + 7) * day) return [];
    const say = (seconds: number) => momentName(plan, seconds, system);
    return `load ${i + 1}: under vacuum at ${say(load.in)}, out of the resin at ${say(load.out)}, in the oven at ${say(load.starts[0])}, done ${say(load.done)}`;
  });
  return {
    title: plan.midnight === undefined ? "Days of the plan" : "Week",
    width: paper,
    height: top,
    picture: svg`${hours}${lines}`,
    says: `hours across, a day a line; ${told.join("; ")}`,
    legend: [
      ["hands", "your hands: loading, taking out, wrapping"],
      ["vacuum", "under vacuum, with the numbers of the loads"],
      ["soaking", "soaking"],
      ["baked", "in the oven"],
      ["night", "closed"],
    ],
  };
}

import { svg } from "lit";
import { type Cell, isFault } from "../../shared/outcome";
import { dateOf } from "../../shared/serial";
import { type Drawing, paper, px } from "./drawing";

/** A load as the plan's table tells it: moments in days, whole numbers being midnights. */
export interface Load {
  readonly name: string;
  readonly pieces: string;
  readonly startBy: number;
  readonly in: number;
  readonly out: number;
  readonly toOven: number;
  readonly done: number;
}

const moments = ["in", "out", "to oven", "done"] as const;

/** The loads of a plan's table, by its header; rows that could not be planned are left out. */
export function loadsOf(table: readonly (readonly Cell[])[], loading: number): Load[] {
  const header = (table[0] ?? []).map(String);
  const at = (row: readonly Cell[], word: string) => row[header.indexOf(word)];
  return table.slice(1).flatMap((row) => {
    const [into, out, toOven, done] = moments.map((word) => at(row, word));
    if (![into, out, toOven, done].every((moment) => typeof moment === "number" && Number.isFinite(moment))) return [];
    const words = (cell: Cell) => (isFault(cell) ? cell.error : String(cell ?? ""));
    return [
      {
        name: words(at(row, "load")),
        pieces: `${words(at(row, "count"))} of ${words(at(row, "pieces"))}`,
        startBy: (into as number) - loading,
        in: into as number,
        out: out as number,
        toOven: toOven as number,
        done: done as number,
      },
    ];
  });
}

const days = ["Sun", "Mon", "Tue", "Wed", "Thu", "Fri", "Sat"];
const months = ["Jan", "Feb", "Mar", "Apr", "May", "Jun", "Jul", "Aug", "Sep", "Oct", "Nov", "Dec"];

/** A day as people say it; a plan without a start counts its days. */
function dayName(day: number): string {
  if (day < 61) return `Day ${Math.floor(day) + 1}`;
  const { year, month, day: date } = dateOf(day);
  return `${days[new Date(Date.UTC(year, month, date)).getUTCDay()]} ${date} ${months[month]}`;
}

export function momentName(moment: number): string {
  const minutes = Math.round(moment * 1440);
  const clock = [Math.floor((minutes % 1440) / 60), minutes % 60].map((part) => String(part).padStart(2, "0")).join(":");
  return `${dayName(minutes / 1440)}, ${clock}`;
}

/** First and last day of a plan. */
export const daysOf = (loads: readonly Load[]): readonly [first: number, last: number] => [
  Math.floor(Math.min(...loads.map(({ startBy }) => startBy))),
  Math.floor(Math.max(...loads.map(({ done }) => done)) - 1e-9),
];

const label = 62;
const dayHeight = 34;
const head = 16;

/** Seven days, an hour as wide on every line: loads in chamber and oven, the nights grey. */
export function weekDrawing(loads: readonly Load[], from: number, opens: number, closes: number): Drawing {
  const [, last] = daysOf(loads);
  const shown = Array.from({ length: Math.min(7, last - from + 1) }, (_, i) => from + i);
  const x = (share: number) => label + share * (paper - label - 2);
  const bar = (day: number, row: number, mark: string, begin: number, end: number, name: string) => {
    const [start, stop] = [Math.max(begin, day), Math.min(end, day + 1)];
    if (stop - start <= 1e-6) return "";
    const wide = x(stop - day) - x(start - day);
    const y = head + (day - from) * dayHeight + 3 + row * 14;
    return svg`<rect class=${mark} x=${px(x(start - day))} y=${px(y)} width=${px(Math.max(wide, 1.5))} height="13" rx="2" />
      ${wide > 12 ? svg`<text class=${`middle on-${mark}`} x=${px(x(start - day) + wide / 2)} y=${px(y + 10)}>${name}</text>` : ""}`;
  };
  const night = (day: number, begin: number, end: number) =>
    svg`<rect class="night" x=${px(x(begin))} y=${px(head + (day - from) * dayHeight)} width=${px(x(end) - x(begin))} height=${dayHeight - 2} />`;
  const lines = shown.map(
    (day) => svg`${night(day, 0, opens)}${night(day, closes, 1)}
      <text x="0" y=${px(head + (day - from) * dayHeight + 20)}>${dayName(day)}</text>
      ${loads.map((load) => [
        bar(day, 0, "soaking", load.in, load.out, load.name),
        bar(day, 1, "baked", load.toOven, load.done, load.name),
      ])}`,
  );
  const hours = [0, 6, 12, 18].map((hour) => svg`<text x=${px(x(hour / 24))} y="10">${hour}</text>`);
  const told = loads.filter(({ startBy, done }) => done > from && startBy < from + 7);
  return {
    title: "Week",
    width: paper,
    height: head + shown.length * dayHeight,
    picture: svg`${hours}${lines}`,
    says: `hours across, a day a line; ${told.map((load) => `load ${load.name}: in the chamber from ${momentName(load.in)} to ${momentName(load.out)}, in the oven from ${momentName(load.toOven)} to ${momentName(load.done)}`).join("; ")}`,
    legend: [
      ["soaking", "in the chamber: vacuum, then soaking"],
      ["baked", "in the oven"],
      ["night", "closed"],
    ],
  };
}

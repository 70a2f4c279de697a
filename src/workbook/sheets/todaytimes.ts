import { type Formula, formula, given } from "../formula";
import type { Page } from "../page";
import type { Ref } from "../place";
import { earlier, endBy, type Hours, later, startFrom } from "./backward";
import type { Blanks } from "./blanks";
import { moment } from "./day";
import type { Shop } from "./shop";
import { type Each, each, oneLine, threeLine } from "./three";
import type { LoadOf } from "./todaypieces";

export interface Begins {
  /** The hour of the demo, or when the run begins. */
  readonly at: Ref;
  readonly isDemo: Formula;
  readonly loads: Ref;
  readonly counts: Each<Ref>;
}

/** Hours that things take. */
export interface Lengths extends Hours {
  readonly loading: Ref;
  readonly vacuum: Ref;
  readonly intake: Ref;
  readonly soak: Ref;
  readonly drain: Each<Ref>;
  readonly bake: Each<Ref>;
  readonly cool: Each<Ref>;
  /** The ends of the likely range of the bake; nothing where there is none. */
  readonly shortest: Each<Ref>;
  readonly longest: Each<Ref>;
  /** Draining, wrapping and baking without a break; and baking with cooling. */
  readonly sitting: Each<Ref>;
  readonly oven: Each<Ref>;
}

/** When each load is where. */
export interface Times {
  readonly load: Each<Ref>;
  readonly air: Each<Ref>;
  readonly drain: Each<Ref>;
  readonly bake: Each<Ref>;
  readonly cool: Each<Ref>;
  readonly done: Each<Ref>;
}

/** Minutes for choosing, the safety list and mixing: common practice, no source. */
export const before = { choose: 15, safety: 10, mix: 15 } as const;
export const ahead = before.choose + before.safety + before.mix;

const used = (count: Ref, made: Formula): Formula => formula`IF(${count}="","",${made})`;

/** How long each thing takes: below the run, for whoever wants to know. */
export function lengthLines(page: Page, shop: Shop, loads: Each<LoadOf>, counts: Each<Ref>, ends: Blanks["ends"]): Lengths {
  page.heading("How long things take", "load 1", "load 2", "load 3", "", "", "");
  // Shown as the clock shows it; counted in hours.
  const clock = (setting: string, label: string) => {
    const holds = shop.holds(setting);
    const shown = oneLine(page, label, formula`IF(${holds}<1,${holds},${holds}/24)`, { format: "hh:mm", good: "My Shop" });
    return formula`(${shown}*24)`;
  };
  const opens = clock("opens", "open from");
  const closes = clock("closes", "open until");
  const hours = (label: string, setting: string, good: string, by = "") =>
    oneLine(page, label, formula`${shop.holds(setting)}${by}`, { unit: "h", format: "0.0", good });
  const loading = hours("loading, and again taking out", "loading minutes", "My Shop", "/60");
  const vacuum = hours("vacuum", "vacuum hours", "My Shop; until the bubbles stop");
  const intake = oneLine(page, "loading and vacuum", formula`${loading}+${vacuum}`, { unit: "h", format: "0.0" });
  const soak = oneLine(page, "soak", formula`${shop.holds("soak hours")}`, {
    unit: "h",
    format: "0.0",
    good: formula`IF(${shop.holds("soak hours")}<2*${vacuum}-0.000001,"less than twice the vacuum: the wood takes up less than planned","My Shop; at least twice the vacuum")`,
  });
  page.alert("attention", soak, formula`IF(COUNT(${soak},${vacuum})=2,${soak}<2*${vacuum}-0.000001,FALSE)`);
  const told = { unit: "min", format: "0" };
  const bakes = threeLine(page, "bake", (load) => loads[load].planned("bake minutes")!, {
    ...told,
    good: "by heat conduction; the resin's label decides",
    bad: "too thick to bake by calculation: follow the resin maker's schedule",
  });
  const end = (label: string, of: Ref, good: string) =>
    threeLine(page, label, (load) => formula`IFERROR(${loads[load].slowest(of)},"")`, { ...told, good });
  const shortest = end("bake, at the shortest", ends.short, "likely range: about 9 outcomes in 10 lie in it");
  const longest = end("bake, at the longest", ends.long, "blank: at that end the core would never get there");
  const cools = threeLine(page, "cool before weighing", (load) => used(counts[load], loads[load].slowestCooling), {
    ...told,
    good: "the slowest pieces of the load, bare and apart, in still air",
    bad: "too thick to cool by calculation: wait until they feel as cold as the room",
  });
  const drain = threeLine(
    page,
    "drain and wrap",
    (load) => used(counts[load], formula`${loading}+${shop.holds("wrap minutes per piece")}*${counts[load]}/60`),
    { unit: "h", format: "0.0" },
  );
  const sitting = threeLine(
    page,
    "drain, wrap and bake",
    (load) => given([drain[load], bakes[load]], formula`${drain[load]}+${bakes[load]}/60`),
    {
      unit: "h",
      format: "0.0",
    },
  );
  const oven = threeLine(page, "bake and cool", (load) => given([bakes[load], cools[load]], formula`(${bakes[load]}+${cools[load]})/60`), {
    unit: "h",
    format: "0.0",
  });
  return { opens, closes, loading, vacuum, intake, soak, drain, bake: bakes, shortest, longest, cool: cools, sitting, oven };
}

const isShown = ({ isDemo, loads }: Begins, load: number, made: Formula): Formula =>
  formula`IF(IF(ISNUMBER(${loads}),AND(${isDemo},${load + 1}<${loads}),FALSE),${made},"")`;

/** Counts back from the demo: load 1 to cut open, load 2 of three ready for the oven. The last load goes in at the demo. */
export function countBack(
  page: Page,
  begins: Begins,
  lengths: Lengths,
): { readonly load: Each<Ref>; readonly drain: Each<Ref>; readonly bake: Each<Ref> } {
  page.heading("Count back from the demo", "load 1", "load 2", "", "", "", "");
  const { at, loads } = begins;
  const top = page.row;
  const line = (row: number, label: string, made: (load: number) => Formula, good = ""): Each<Ref> => {
    page.row = top + row;
    return threeLine(page, label, (load) => (load < 2 ? isShown(begins, load, made(load)) : formula`""`), { format: moment, good });
  };
  // Load 2 comes first: load 1 must be cool before it goes in.
  const refAt = (row: number) => each((load) => ({ sheet: page.sheet.name, row: top + row, column: 1 + load, rows: 1, columns: 1 }) as Ref);
  const [due, cool, bakes, drained, drains, air, load] = [0, 1, 2, 3, 4, 5, 6].map(refAt);
  line(
    0,
    "needed at",
    (one) => (one === 0 ? formula`IF(${loads}=2,${at},${load[1]})` : formula`${at}`),
    "load 1 cool, to cut open; load 2 of three ready for the oven",
  );
  line(1, "cool at the latest", (one) => (one === 0 ? endBy(due[0], lengths.oven[0], lengths) : later(at, lengths.oven[1])));
  line(2, "bake from", (one) => (one === 0 ? earlier(cool[0], lengths.oven[0]) : formula`${at}`));
  line(3, "drained and wrapped", (one) => endBy(one === 0 ? bakes[0] : due[1], lengths.drain[one], lengths));
  line(4, "drain from", (one) => earlier(drained[one], lengths.drain[one]));
  line(5, "soak from, at the latest", (one) => earlier(drains[one], lengths.soak));
  line(6, "load from", (one) =>
    given([air[one], lengths.intake], formula`${endBy(air[one], lengths.intake, lengths)}-${lengths.intake}/24`),
  );
  page.row = top + 7;
  return { load, drain: drains, bake: bakes };
}

/** The times of each load, the demo or the start given; they stand with the steps. */
export function timeFormulas(begins: Begins, lengths: Lengths, back: ReturnType<typeof countBack>, places: Times) {
  const { at, isDemo, loads, counts } = begins;
  const isBack = (load: number) => formula`IF(ISNUMBER(${loads}),AND(${isDemo},${load + 1}<${loads}),FALSE)`;
  const mine = (load: number, made: Formula) => used(counts[load], made);
  const first = formula`IF(ISNUMBER(${at}),${at}+${ahead}/1440,"")`;
  return {
    load: (load: number) =>
      mine(
        load,
        formula`IF(${isBack(load)},${back.load[load]},IF(${isDemo},IF(ISNUMBER(${at}),${at},""),${load ? startFrom(places.bake[load - 1], lengths.intake, lengths) : first}))`,
      ),
    air: (load: number) => later(places.load[load], lengths.intake),
    drain: (load: number) =>
      mine(
        load,
        formula`IF(${isBack(load)},${back.drain[load]},${startFromSum(places.air[load], lengths.soak, lengths.sitting[load], lengths)})`,
      ),
    bake: (load: number) => mine(load, formula`IF(${isBack(load)},${back.bake[load]},${later(places.drain[load], lengths.drain[load])})`),
    cool: (load: number) => given([places.bake[load], lengths.bake[load]], formula`${places.bake[load]}+${lengths.bake[load]}/1440`),
    done: (load: number) => later(places.bake[load], lengths.oven[load]),
  };
}

/** The first moment after a soak from which so many attended hours fit into one day. */
function startFromSum(air: Ref, soak: Ref, hours: Ref, { opens, closes }: Hours): Formula {
  const end = formula`(${air}+${soak}/24)`;
  const hour = formula`MOD(${end},1)*24`;
  return given(
    [air, soak, hours],
    formula`IF(${hour}<${opens}-0.000001,INT(${end})+${opens}/24,IF(${hour}+${hours}<=${closes}+0.000001,${end},INT(${end})+1+${opens}/24))`,
  );
}

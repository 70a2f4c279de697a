import { capital } from "../../shared/capital";
import { closingOf, isOff, minute, openingOf } from "./hours";
import { isOpen, isOver } from "./progress";
import type { Run, Step } from "./schema";
import { kindOf } from "./stepkinds";
import { rough, unitsOf } from "./steplines";
import { datedWrong, fresh, isExpiring, mixingOf, usableUntil } from "./stock";
import { hoursOf, lastLoad, timeline } from "./timeline";

/** How moments and durations are put into words. */
export interface Telling {
  readonly moment: (at: number) => string;
  readonly spell: (milliseconds: number) => string;
  readonly day: (at: number) => string;
}

/** A shorter delay is not told. */
const patience = 5 * minute;

/** The facts that a step needs and that are missing. */
const rests: Readonly<Record<Step["kind"], readonly string[]>> = {
  choose: ["shop", "dry"],
  safety: [],
  mix: ["mix", "dye", "spoons", "pour"],
  load: ["pour", "ballast"],
  vacuum: ["gauge"],
  air: ["add"],
  soak: [],
  drain: [],
  bake: ["bake"],
  cool: ["cool", "cooling"],
  weigh: [],
  price: [],
};

function missing(run: Run, { kind, loads }: Step, now: number): string[] {
  const about = loads.length ? loads : run.loads.map((_, i) => i + 1);
  const before = kind === "mix" && mixingOf(run, now).isFresh ? fresh : "";
  const names = rests[kind].flatMap((name) => [before + name, ...about.map((load) => `${name} ${load}`)]);
  const words = names.flatMap((name) => {
    const fault = run.faults[name];
    const load = / (\d)$/.exec(name)?.[1];
    return fault ? [run.loads.length > 1 && load ? `Load ${load}: ${fault}.` : `${capital(fault)}.`] : [];
  });
  return [...new Set(words)];
}

/** What is wrong with a step as things stand: late, not in time, outside the hours, or short of a number. */
export function problemsOf(run: Run, step: Step, now: number, { moment, spell, day }: Telling): string[] {
  const words = missing(run, step, now);
  if (isOver(step)) return words;
  const { from, to } = timeline(run, now).get(step.id)!;
  const begun = step.started !== undefined;
  if (!begun && isOpen(run, step) && now - step.planned > patience)
    words.push(`It was due to start at ${moment(step.planned)}, ${spell(now - step.planned)} ago.`);
  words.push(...tooLate(run, step, { from, to }, { moment, spell }));
  const hours = hoursOf(run);
  const attended = !kindOf(step.kind).alone && to > from;
  if (attended && (to > closingOf(from, hours) + minute || from < openingOf(from, hours) - minute))
    words.push(
      `It runs to ${moment(to)}, outside the hours on My Shop (${moment(openingOf(from, hours))} to ${moment(closingOf(from, hours))}).`,
    );
  if (attended && isOff(from, hours)) words.push("My Shop has this as a day off.");
  if (step.kind === "mix") words.push(...onHandWords(run, now, day));
  return words;
}

function tooLate(
  run: Run,
  step: Step,
  { from, to }: { from: number; to: number },
  { moment, spell }: Pick<Telling, "moment" | "spell">,
): string[] {
  const { how, at } = run.begins;
  if (how !== "demo") return [];
  const late = (by: number) =>
    by > patience ? [`This will not be done in time for the demo at ${moment(at)}: late by ${spell(by)}.`] : [];
  const first = [...new Set(run.steps.filter(({ kind }) => kind === "load").map(({ loads }) => loads[0]))];
  const last = lastLoad(run).loads[0];
  if (kindOf(step.kind).once && step.kind !== "price") return late(to - at);
  if (step.loads[0] === last) return step.kind === "load" ? late(from - at) : [];
  const isShown = step.loads[0] === first[0] && step.kind !== "weigh";
  const isReady = first.length > 2 && step.loads[0] === first[1] && !["bake", "cool", "weigh"].includes(step.kind);
  return isShown || isReady ? late(to - at) : [];
}

/** What keeps the resin on hand out of this run, and what to do with it. */
function onHandWords(run: Run, now: number, day: Telling["day"]): string[] {
  const until = usableUntil(run);
  const own = `${rough(Number(run.facts["resin on hand"] ?? 0))} ${unitsOf(run).fluid}`;
  if (until !== undefined && isExpiring(run, now)) {
    const last = day(until - minute);
    const why = until <= now ? `expired after ${last}` : `expires after ${last}, before this run is over`;
    return [`The ${own} on hand ${why}. Do not use it, and dispose of it as its safety data sheet says. The numbers here leave it out.`];
  }
  switch (datedWrong(run, now)) {
    case "none":
      return [`The ${own} on hand has no date on My Shop. Read it off the tub before you use it.`];
    case "ahead":
      return ["The resin on hand is dated after this run: check its date on My Shop."];
    default:
      return [];
  }
}

import { inStage } from "../checklist/list";
import type { List, Stage } from "../checklist/schema";
import { minute } from "./hours";
import type { Telling } from "./problems";
import { isOver } from "./progress";
import type { Run, Step } from "./schema";
import type { KindName } from "./stepkinds";
import { rough, unitsOf } from "./steplines";
import { lengthOf } from "./timeline";

/** Which part of the safety list belongs to which step. */
export const stagesAt: Partial<Record<KindName, readonly Stage[]>> = {
  safety: ["before", "audience"],
  mix: ["mixing"],
  vacuum: ["vacuum"],
  soak: ["soaking"],
  bake: ["oven"],
  cool: ["after"],
};

export const itemsAt = (list: List, kind: KindName) => (stagesAt[kind] ?? []).flatMap((stage) => inStage(list, stage));

/** Whether check marks were made for another day than this. */
export const isFromBefore = ({ now, items }: List, today: string): boolean => now.when !== today && items.some(({ done }) => done);

/** What speaks against the next touch, and the two answers to choose from. */
export interface Doubt {
  readonly words: readonly string[];
  readonly yes: string;
  readonly no: string;
  /** It is about the safety list. */
  readonly isList?: true;
}

interface Sight {
  readonly list: List;
  readonly today: string;
  readonly now: number;
  readonly telling: Pick<Telling, "spell">;
}

/** The stages of the list to ask about before a pump or an oven runs: its own, and earlier ones that no step asked about. */
const dueFor: Partial<Record<KindName, readonly KindName[]>> = { safety: ["safety"], vacuum: ["mix", "vacuum"], bake: ["bake"] };

function unchecked(run: Run, step: Step, { list, today }: Sight): Doubt | undefined {
  const due = dueFor[step.kind];
  if (!due || run.steps.some((one) => one !== step && one.kind === step.kind && one.started !== undefined)) return undefined;
  const items = due.flatMap((kind) => itemsAt(list, kind));
  const isOld = isFromBefore(list, today);
  const done = isOld ? 0 : items.filter((item) => item.done).length;
  if (done >= items.length) return undefined;
  const said = `${done} of ${items.length} points of the safety list are checked for this step.`;
  const words = isOld ? [said, "The check marks on it are from an earlier run."] : [said];
  return { words: [...words, "Continue?"], yes: "Continue", no: "Show me the list", isList: true };
}

const early: Partial<Record<KindName, { readonly usual: string; readonly why: string; readonly ask: string; readonly yes: string }>> = {
  vacuum: {
    usual: "usually takes",
    why: "Air still in the wood leaves no room for resin, and the center stays pale and weak.",
    ask: "Have the bubbles really stopped?",
    yes: "Yes, they have stopped",
  },
  soak: {
    usual: "takes at least",
    why: "Wood taken out early has not taken up its resin yet.",
    ask: "Take the pieces out now?",
    yes: "Take them out now",
  },
  bake: {
    usual: "takes about",
    why: "Resin that did not get hot enough stays sticky, and sticky resin harms the skin.",
    ask: "Is the core at its temperature?",
    yes: "Yes, take them out",
  },
  cool: {
    usual: "takes about",
    why: "A warm piece burns, weighs wrong, and can set the resin in the tub.",
    ask: "Do all of them feel as cold as the room?",
    yes: "Yes, they are cold",
  },
};

/** A step that is ended well before its time. */
function tooShort(run: Run, step: Step, { now, telling }: Sight): Doubt | undefined {
  const words = early[step.kind];
  const due = lengthOf(run, step);
  if (!words || step.started === undefined || now - step.started >= due - minute) return undefined;
  const spent = Math.max(0, now - step.started);
  const lasted = spent < minute ? "less than a minute" : telling.spell(spent);
  const first = `It has run for ${lasted}; it ${words.usual} ${telling.spell(due)}.`;
  return {
    words: [first, ...(step.kind === "vacuum" ? [gaugeWords(run, step)] : []), words.why, words.ask].filter(Boolean),
    yes: words.yes,
    no: "Not yet",
  };
}

function gaugeWords(run: Run, step: Step): string {
  const due = run.facts["gauge at least"];
  const last = run.readings.findLast((reading) => reading.step === step.id);
  if (typeof due !== "number") return "";
  const unit = unitsOf(run).pressure;
  if (!last) return `No gauge reading is noted. It should be at least ${rough(due, 3)} ${unit}.`;
  return last.gauge < due * 0.995
    ? `The last gauge reading is ${rough(last.gauge, 3)} ${unit}. It should be at least ${rough(due, 3)} ${unit}.`
    : "";
}

/** What a person should know before beginning or ending a step; undefined where nothing speaks against it. */
export function doubtOf(run: Run, step: Step, sight: Sight): Doubt | undefined {
  if (isOver(step)) return undefined;
  const begins = step.kind === "safety" || step.started === undefined;
  return begins ? unchecked(run, step, sight) : tooShort(run, step, sight);
}

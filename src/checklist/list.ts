import { defaultOf, defaults } from "./items";
import { type Item, type List, longest, mostRuns, type Now, noRun, type Run, type Stage, stageNames } from "./schema";

/** Every change makes a new list, so that it can be undone. */

export const fresh: List = { items: defaults, now: noRun, runs: [] };

const withItem = (list: List, id: string, change: (item: Item) => Item): List => ({
  ...list,
  items: list.items.map((item) => (item.id === id ? change(item) : item)),
});

/** One line, as long as a line may be. */
export const oneLine = (text: string): string => text.replace(/\s+/g, " ").trim().slice(0, longest);

export const tick = (list: List, id: string, done: boolean): List => withItem(list, id, (item) => ({ ...item, done }));

export interface Words {
  readonly stage: Stage;
  readonly text: string;
  readonly why: string;
}

const tidied = ({ stage, text, why }: Words): Words => ({ stage, text: oneLine(text), why: oneLine(why) });

export function edit(list: List, id: string, words: Words): List {
  const old = list.items.find((item) => item.id === id);
  if (!old) return list;
  const changed = { ...old, ...tidied(words) };
  if (changed.stage === old.stage) return withItem(list, id, () => changed);
  return { ...list, items: [...list.items.filter((item) => item.id !== id), changed] };
}

export function add(list: List, words: Words): List {
  const taken = new Set(list.items.map(({ id }) => id));
  let number = 1;
  while (taken.has(`own-${number}`)) number++;
  return { ...list, items: [...list.items, { id: `own-${number}`, ...tidied(words), done: false }] };
}

const hasWords = (item: Item, words: Words): boolean => {
  const { stage, text, why } = tidied(words);
  return item.stage === stage && item.text === text && item.why === why;
};

/** The list with these words in an item, or in a new one; the same object where nothing changes. */
export function worded(list: List, id: string | undefined, words: Words): List {
  if (id === undefined) return add(list, words);
  const item = list.items.find((one) => one.id === id);
  return item && hasWords(item, words) ? list : edit(list, id, words);
}

export const remove = (list: List, id: string): List => ({ ...list, items: list.items.filter((item) => item.id !== id) });

/** The items of one stage, in their order. */
export const inStage = (list: List, stage: Stage): Item[] => list.items.filter((item) => item.stage === stage);

/** Moves an item up (-1) or down (1) among those of its stage. */
export function move(list: List, id: string, by: -1 | 1): List {
  const item = list.items.find((one) => one.id === id);
  if (!item) return list;
  const peers = inStage(list, item.stage);
  const other = peers[peers.indexOf(item) + by];
  if (!other) return list;
  return { ...list, items: list.items.map((one) => (one === item ? other : one === other ? item : one)) };
}

/** Whether an item that came with the list says something else by now. */
export function isChanged({ id, stage, text, why }: Item): boolean {
  const first = defaultOf(id);
  return first !== undefined && (first.stage !== stage || first.text !== text || first.why !== why);
}

export const removed = (list: List): Item[] => defaults.filter(({ id }) => !list.items.some((item) => item.id === id));

/** Puts one item back as it came: its words, or the item itself. Its tick stays. */
export function restore(list: List, id: string): List {
  const first = defaultOf(id);
  if (!first) return list;
  if (list.items.some((item) => item.id === id)) return edit(list, id, first);
  return { ...list, items: ordered([...list.items, first]) };
}

/** Puts every item back as it came and keeps what the person added, after them. Ticks stay. */
export function restoreAll(list: List): List {
  const done = new Set(list.items.filter((item) => item.done).map(({ id }) => id));
  const own = list.items.filter(({ id }) => !defaultOf(id));
  return { ...list, items: [...defaults.map((item) => ({ ...item, done: done.has(item.id) })), ...own] };
}

/** A default put back goes after the default that it came after, within its stage. */
function ordered(items: readonly Item[]): Item[] {
  const back = items.at(-1)!;
  const rest = items.slice(0, -1);
  const before = new Set(
    defaults
      .slice(
        0,
        defaults.findIndex(({ id }) => id === back.id),
      )
      .map(({ id }) => id),
  );
  const at = rest.findLastIndex((item) => item.stage === back.stage && before.has(item.id));
  const start = at >= 0 ? at + 1 : rest.findIndex((item) => item.stage === back.stage);
  return start < 0 ? [...items] : [...rest.slice(0, start), back, ...rest.slice(start)];
}

const unticked = (list: List): Item[] => stageNames.flatMap((stage) => inStage(list, stage)).filter((item) => !item.done);

/** Whether a run is under way, as far as the list knows. */
const isBegun = ({ items, now }: List): boolean => items.some(({ done }) => done) || now.who !== "" || now.when !== "";

/** Clears the check marks for a new run; a short record of the run before stays among the earlier runs. */
export function startRun(list: List, now: Now): List {
  const begun = { ...now, who: oneLine(now.who), by: oneLine(now.by), calls: oneLine(now.calls) };
  const over: Run = { when: list.now.when || begun.when, who: list.now.who, open: unticked(list).map(({ text }) => text) };
  return {
    ...list,
    items: list.items.map((item) => ({ ...item, done: false })),
    now: begun,
    runs: (isBegun(list) ? [over, ...list.runs] : list.runs).slice(0, mostRuns),
  };
}

/** What a run left unticked, in a few words. */
export const leftOpen = ({ open }: Run): string => (open.length ? `${open.length} not checked` : "all checked");

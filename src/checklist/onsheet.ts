import { isoDate, readDate } from "../../shared/serial";
import { add, edit, inStage, leftOpen, oneLine, remove, tick } from "./list";
import { type Item, type List, mostRuns, type Now, type Stage, stageNames, stages } from "./schema";

/** The list as the sheet Safety shows it. Whoever ticks or types there changes the same document. */

type Value = string | number | boolean;
type Row = readonly Value[];

/** Rows that the sheet has for items, and what each column holds. */
export const room = 48;
export const columns = ["done", "when", "check", "why"] as const;
const ticked = "x";

/** The cells of the sheet by the names they have in the workbook. */
export const places = { run: "SafetyRun", list: "SafetyList", runs: "SafetyRuns" } as const;
export type Cells = Readonly<Record<keyof typeof places, readonly Row[]>>;

/** Items in the order of the work: where the sheet has no room, the last ones are left to the pane, and its last row says so. */
function inOrder(list: List): { readonly shown: readonly Item[]; readonly more: number } {
  const all = stageNames.flatMap((stage) => inStage(list, stage));
  return all.length <= room ? { shown: all, more: 0 } : { shown: all.slice(0, room - 1), more: all.length - room + 1 };
}

const moreWords = " more are on the list in the side pane";

const filled = (rows: readonly Row[], length: number, width: number): Row[] => [
  ...rows,
  ...Array.from({ length: Math.max(0, length - rows.length) }, () => Array.from({ length: width }, () => "")),
];

export function toSheet(list: List): Cells {
  const { when, who, by, calls } = list.now;
  const { shown, more } = inOrder(list);
  const rows = shown.map(({ done, stage, text, why }): Row => [done ? ticked : "", stages[stage], text, why]);
  if (more) rows.push(["", "", `${more}${moreWords}`, ""]);
  const runs = list.runs.map(
    (run): Row => [readDate(run.when) ?? "", run.who, `${leftOpen(run)}${run.open.length ? `: ${run.open.join("; ")}` : ""}`],
  );
  return {
    run: [[readDate(when) ?? ""], [who], [by], [calls]],
    list: filled(rows, room, columns.length),
    runs: filled(runs, mostRuns, 3),
  };
}

const isTicked = (cell: Value | null | undefined): boolean =>
  cell === true || (typeof cell === "string" && !["", "open", "no", "false"].includes(cell.trim().toLowerCase()));

const stageOf = (cell: unknown): Stage | undefined =>
  stageNames.find(
    (stage) =>
      stages[stage].toLowerCase() ===
      String(cell ?? "")
        .trim()
        .toLowerCase(),
  );

const words = (cell: unknown): string => (typeof cell === "string" ? oneLine(cell) : typeof cell === "number" ? String(cell) : "");

/** Serials of the days up to 31 December 9999. */
const days = [61, 2_958_465] as const;

function dayOf(cell: unknown): string {
  if (typeof cell === "number") return cell >= days[0] && cell <= days[1] ? isoDate(cell) : "";
  return readDate(words(cell)) === undefined ? "" : words(cell).slice(0, 10);
}

const nowOf = (cells: readonly (readonly unknown[])[]): Now => ({
  when: dayOf(cells[0]?.[0]),
  who: words(cells[1]?.[0]),
  by: words(cells[2]?.[0]),
  calls: words(cells[3]?.[0]),
});

/**
 * The list with what was ticked, typed, added or taken out on the sheet. A row is the item that has its words; a row with other
 * words is the item whose row it was.
 */
export function fromSheet(
  list: List,
  cells: { readonly run: readonly (readonly unknown[])[]; readonly list: readonly (readonly unknown[])[] },
): List {
  const rows = cells.list.flatMap(([done, stage, text, why], at) =>
    words(text) && !words(text).endsWith(moreWords)
      ? [{ at, done: isTicked(done as Value), stage: stageOf(stage), text: words(text), why: words(why) }]
      : [],
  );
  const { shown } = inOrder(list);
  const found = new Map<(typeof rows)[number], Item>();
  const free = new Set(shown);
  for (const row of rows) {
    const item = [...free].find(({ text }) => text === row.text);
    if (item) {
      found.set(row, item);
      free.delete(item);
    }
  }
  for (const row of rows) {
    const item = shown[row.at];
    if (!found.has(row) && item && free.delete(item)) found.set(row, item);
  }
  let changed: List = { ...list, now: nowOf(cells.run) };
  for (const item of free) changed = remove(changed, item.id);
  for (const row of rows) {
    const item = found.get(row);
    const stage = row.stage ?? item?.stage ?? "before";
    if (item) {
      if (item.text !== row.text || item.why !== row.why || item.stage !== stage) changed = edit(changed, item.id, { ...row, stage });
      changed = tick(changed, item.id, row.done);
    } else {
      changed = add(changed, { ...row, stage });
      changed = tick(changed, changed.items.at(-1)!.id, row.done);
    }
  }
  return changed;
}

import type { Ended, Work } from "../../shared/host";
import { base64 } from "./base64";
import { reenter } from "./reenter";
import { stripped } from "./stripped";

/** Where Excel runs: on the web it takes no sheet that holds a drawing or a comment. */
export type Platform = "web" | "desktop";

async function sheetIds(context: Excel.RequestContext): Promise<Set<string>> {
  const { worksheets } = context.workbook;
  worksheets.load("items/id, items/name");
  await context.sync();
  return new Set(worksheets.items.map(({ id }) => id));
}

/** Takes out again what an insert brought before it failed or was stopped. */
async function takeOut(context: Excel.RequestContext, before: ReadonlySet<string>): Promise<void> {
  const { worksheets } = context.workbook;
  worksheets.load("items/id");
  await context.sync();
  for (const sheet of worksheets.items) if (!before.has(sheet.id)) sheet.delete();
  await context.sync();
}

/** Inserts sheets of a workbook file at the end, whole or not at all; Excel itself gives a number to a name that is taken. */
export async function insert(
  context: Excel.RequestContext,
  file: Uint8Array,
  sheets: readonly string[],
  platform: Platform,
  work: Work,
): Promise<Ended> {
  const before = await sheetIds(context);
  try {
    const sheetNamesToInsert = [...sheets];
    const options = { sheetNamesToInsert, positionType: "End" as Excel.WorksheetPositionType };
    context.workbook.insertWorksheetsFromBase64(base64(platform === "web" ? stripped(file) : file), options);
    await context.sync();
    work.progress(0.5);
    const { worksheets } = context.workbook;
    worksheets.load("items/id, items/name");
    await context.sync();
    const added = worksheets.items.filter(({ id }) => !before.has(id));
    const ranges = added.map((sheet) => sheet.getUsedRangeOrNullObject(true));
    await reenter(context, ranges, { ...work, progress: (share) => work.progress(0.5 + share / 2) });
    if (work.stop.aborted) {
      await takeOut(context, before);
      return { done: false, words: "Stopped: the workbook is as it was." };
    }
    return { done: true, words: `Inserted at the end: ${added.map(({ name }) => name).join(", ")}. Undo does not reach back past this.` };
  } catch (error) {
    await takeOut(context, before).catch(() => undefined);
    throw error;
  }
}

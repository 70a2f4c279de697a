import type { Ended, SheetHost, Work } from "../../shared/host";
import { withCommas } from "../../shared/xlsx/separators";
import { base64 } from "./base64";
import { asked, doing, patiently } from "./batch";
import { contents, printSheet, put, read, recalculate, selection, write } from "./cells";
import { guard } from "./heard";
import type { Platform } from "./insert";
import type { LastCalls } from "./lastcall";
import { reenter } from "./reenter";
import { savedFile } from "./savedfile";
import { tried, wordsOf } from "./trouble";
import { hasCommas, warnings } from "./warnings";

export interface Surroundings {
  readonly platform: Platform;
  /** Office for Mac starts no download of a pane (OfficeDev/office-js, issues 2700 and 3385). */
  readonly savesFiles?: boolean;
  readonly pause?: SheetHost["pause"];
  /** The version of the functions' own script. */
  readonly functionsVersion?: string;
  /** The calls that the functions' own script records. */
  readonly calls: LastCalls;
}

async function copyWithValues({ progress, stop }: Work): Promise<Ended> {
  const saved = await savedFile();
  progress(0.5);
  const { plainEdition } = await import("../workbook/sharing/plainedition");
  const { file, words } = plainEdition(saved);
  if (stop.aborted) return { done: false, words: "Stopped: no copy was made." };
  await Excel.createWorkbook(base64(file));
  return { done: true, words: `The copy opens as a new workbook; ${words}.` };
}

const opensWithWorkbook = {
  get: async () => {
    try {
      return (await Office.addin.getStartupBehavior()) === Office.StartupBehavior.load;
    } catch {
      return false;
    }
  },
  set: (on: boolean) =>
    tried(async (): Promise<Ended> => {
      await Office.addin.setStartupBehavior(on ? Office.StartupBehavior.load : Office.StartupBehavior.none);
      return {
        done: true,
        words: on ? "This pane opens with this workbook, once the workbook is saved." : "This pane will not open with this workbook.",
      };
    }),
};

async function partOf(context: Excel.RequestContext, namespace: string): Promise<Excel.CustomXmlPart | undefined> {
  const parts = context.workbook.customXmlParts.getByNamespace(namespace);
  parts.load("items/id");
  await context.sync();
  return parts.items[0];
}

/** Excel as the pane sees it. */
export function excelHost({ platform, calls, savesFiles = true, pause, functionsVersion }: Surroundings): SheetHost {
  const watchers = new Set<() => void>();
  const ready = guard(calls, () => {
    for (const changed of watchers) changed();
  });
  return {
    name: "Excel",
    savesFiles,
    endsUndo: true,
    warnings: () => warnings(functionsVersion),
    typedThere: async () => ((await hasCommas()) ? withCommas : (formula) => formula),
    selection: (reference) => asked((context) => selection(context, calls, reference)),
    watch: (changed) => {
      watchers.add(changed);
      return () => watchers.delete(changed);
    },
    read: (reference) => asked((context) => read(context, reference)),
    contents: (reference) => asked((context) => contents(context, reference)),
    put: (blocks) => doing((context) => put(context, blocks)),
    write: (formula, look, over) => doing((context) => write(context, formula, look, over)),
    recalculate: () => doing(recalculate),
    insert: async (file, sheets, work) => {
      await ready;
      return doing(async (context) => {
        const { insert } = await import("./insert");
        return insert(context, file, sheets, platform, work);
      });
    },
    open: (file) =>
      tried(async (): Promise<Ended> => {
        await Excel.createWorkbook(base64(file));
        return { done: true };
      }),
    reenter: (where, work) =>
      doing(async (context) => {
        if (where === "selection") return reenter(context, [context.workbook.getSelectedRange()], work);
        const { worksheets } = context.workbook;
        worksheets.load("items/id");
        await context.sync();
        return reenter(
          context,
          worksheets.items.map((sheet) => sheet.getUsedRangeOrNullObject(true)),
          work,
        );
      }),
    copyWithValues: (work) => tried(() => copyWithValues(work)),
    opensWithWorkbook,
    readPart: (namespace) =>
      patiently(async (context) => {
        const part = await partOf(context, namespace);
        const xml = part?.getXml();
        await context.sync();
        return xml?.value;
      }).catch((error) => {
        throw new Error(wordsOf(error));
      }),
    pause,
    writePart: (namespace, xml) =>
      doing(async (context): Promise<Ended> => {
        const part = await partOf(context, namespace);
        if (part) part.setXml(xml);
        else context.workbook.customXmlParts.add(xml);
        await context.sync();
        return { done: true };
      }),
    printSheet: (title, rows) => doing((context) => printSheet(context, title, rows)),
  };
}

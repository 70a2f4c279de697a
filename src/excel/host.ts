import type { Ended, SheetHost, Work } from "../../shared/host";
import { withCommas } from "../../shared/separators";
import { versionText } from "../version";
import { base64 } from "./base64";
import { contents, printSheet, put, read, recalculate, selection, write } from "./cells";
import type { Platform } from "./insert";
import type { LastCalls } from "./lastcall";
import { reenter } from "./reenter";
import { tried, wordsOf } from "./trouble";

export interface Surroundings {
  readonly platform: Platform;
  /** Office for Mac starts no download of a pane (OfficeDev/office-js, issues 2700 and 3385). */
  readonly savesFiles?: boolean;
  /** Waits until the person pauses or leaves: keeping a part ends Excel's Undo, so it is done seldom. */
  readonly pause?: () => Promise<void>;
  /** The version of the functions' own script. */
  readonly functionsVersion?: string;
  /** The calls that the functions' own script records. */
  readonly calls: LastCalls;
}

type Batch<T> = (context: Excel.RequestContext) => Promise<T>;

const run = <T>(batch: Batch<T>): Promise<T> => Excel.run(batch);

/** Waits while a cell is being typed into. */
const patiently = <T>(batch: Batch<T>): Promise<T> => Excel.run({ delayForCellEdit: true }, batch);

/** What cannot be answered is undefined: the pane says what to do instead. */
const asked = <T>(batch: Batch<T>): Promise<T | undefined> => patiently(batch).catch(() => undefined);

const doing = <E extends Ended>(batch: Batch<E>) => tried(() => run(batch));

/** Changes of cells leave addresses as they are; all others move some. */
const isMove = ({ changeType }: Excel.WorksheetChangedEventArgs) => changeType !== "RangeEdited";

/** Hears of everything that makes a recorded call stale; what this version of Excel does not tell, it cannot. */
async function guard(calls: LastCalls, changed: () => void): Promise<void> {
  const clear = async () => {
    calls.clear();
    changed();
  };
  const events: ((sheets: Excel.WorksheetCollection) => void)[] = [
    (sheets) => sheets.onSelectionChanged.add(async () => changed()),
    (sheets) => sheets.onActivated.add(async () => changed()),
    (sheets) =>
      sheets.onChanged.add(async (event) => {
        if (isMove(event)) calls.clear();
        changed();
      }),
    (sheets) =>
      sheets.onCalculated.add(async () => {
        calls.settle();
        changed();
      }),
    (sheets) => sheets.onRowSorted.add(clear),
    (sheets) => sheets.onColumnSorted.add(clear),
    (sheets) => sheets.onNameChanged.add(clear),
    (sheets) => sheets.onDeleted.add(clear),
  ];
  for (const add of events)
    await asked(async (context) => {
      add(context.workbook.worksheets);
      await context.sync();
    });
}

/** The whole workbook as a file, as Excel would save it now. */
const savedFile = (): Promise<Uint8Array> =>
  new Promise((resolve, reject) => {
    Office.context.document.getFileAsync(Office.FileType.Compressed, { sliceSize: 1 << 22 }, async ({ status, value: file, error }) => {
      if (status !== Office.AsyncResultStatus.Succeeded) return reject(error);
      const slice = (index: number) =>
        new Promise<number[]>((done, failed) =>
          file.getSliceAsync(index, (got) =>
            got.status === Office.AsyncResultStatus.Succeeded ? done(got.value.data) : failed(got.error),
          ),
        );
      try {
        const bytes: number[] = [];
        for (let i = 0; i < file.sliceCount; i++) for (const byte of await slice(i)) bytes.push(byte);
        resolve(Uint8Array.from(bytes));
      } catch (trouble) {
        reject(trouble);
      } finally {
        file.closeAsync();
      }
    });
  });

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

/** Whether numbers have a comma here; a version that does not tell is taken to have points. */
const hasCommas = async (): Promise<boolean> =>
  (await asked(async (context) => {
    const { numberFormat } = context.application.cultureInfo;
    numberFormat.load("numberDecimalSeparator");
    await context.sync();
    return numberFormat.numberDecimalSeparator === ",";
  })) ?? false;

/** The second day of 1904 is day 1 where days are counted from the first, and day 1463 everywhere else. */
const countsFrom1904 = async (): Promise<boolean> =>
  (await asked(async (context) => {
    const day = context.workbook.functions.date(1904, 1, 2);
    day.load("value");
    await context.sync();
    return day.value === 1;
  })) ?? false;

async function warnings(functionsVersion: string | undefined): Promise<string[]> {
  const told: string[] = [];
  if (functionsVersion !== undefined && functionsVersion !== versionText)
    told.push(
      `This pane is version ${versionText} and the functions in cells are version ${functionsVersion}. Close Excel and open it again; it may keep the old functions for up to a day.`,
    );
  if (await countsFrom1904())
    told.push(
      "This workbook counts days from 1904, and Porewise from 1900: every date would be four years off. In Excel's options, under Advanced, uncheck “Use 1904 date system”, and type your dates again.",
    );
  return told;
}

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
    writePart: async (namespace, xml) => {
      await pause?.();
      return doing(async (context): Promise<Ended> => {
        const part = await partOf(context, namespace);
        if (part) part.setXml(xml);
        else context.workbook.customXmlParts.add(xml);
        await context.sync();
        return { done: true };
      });
    },
    printSheet: (title, rows) => doing((context) => printSheet(context, title, rows)),
  };
}

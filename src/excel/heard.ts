import { asked } from "./batch";
import type { LastCalls } from "./lastcall";

/** Changes of cells leave addresses as they are; all others move some. */
const isMove = ({ changeType }: Excel.WorksheetChangedEventArgs) => changeType !== "RangeEdited";

/** Listens for everything that makes a recorded call stale, as far as this version of Excel raises the events. */
export async function guard(calls: LastCalls, changed: () => void): Promise<void> {
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

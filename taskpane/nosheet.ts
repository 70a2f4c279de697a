import type { Ended, SheetHost } from "../shared/host";

const here: Ended = { done: false, words: "There is no sheet beside this page: open Porewise in Excel, or on its own page." };
const refused = async (): Promise<Ended> => here;

/** The host of a pane that is open in a browser alone: functions can be tried, nothing can be written. */
export const noSheet: SheetHost = {
  name: "page",
  selection: async () => undefined,
  watch: () => () => undefined,
  read: async () => undefined,
  contents: async () => undefined,
  put: refused,
  write: refused,
  recalculate: refused,
  insert: refused,
  open: refused,
  reenter: refused,
  copyWithValues: refused,
  readPart: async () => undefined,
  writePart: refused,
  printSheet: refused,
};

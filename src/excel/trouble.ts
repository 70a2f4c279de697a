import type { Ended } from "../../shared/host";

/** What Excel's refusals mean to a person, by its code for them. */
const words: Readonly<Record<string, string>> = {
  InvalidOperationInCellEditMode: "Finish typing in the cell first: press Enter or Esc, then try again.",
  AccessDenied: "Excel does not let this be changed: the sheet is protected, or the workbook is read only.",
  InvalidSelection: "Select one cell, or one block of cells.",
  ItemNotFound: "That is no longer in the workbook: check and try again.",
  ItemAlreadyExists: "That name is already in use.",
  ApiNotFound: "This version of Excel cannot do that.",
  NotImplemented: "This version of Excel cannot do that.",
  UnsupportedOperation: "This version of Excel cannot do that.",
  RequestAborted: "Excel stopped before it was done: try again.",
  ActivityLimitReached: "Excel is busy: wait a little, then try again.",
  RangeExceedsLimit: "The range is too large: select less.",
  OperationCellsExceedLimit: "The range is too large: select less.",
  RequestPayloadSizeLimitExceeded: "The file is too large for Excel on the web: open it as a new workbook instead.",
  ResponsePayloadSizeLimitExceeded: "The range is too large: select less.",
};

const codeOf = (error: unknown): string => (typeof error === "object" && error && "code" in error ? String(error.code) : "");

/** Excel's refusal in plain words; one that is not known is told as Excel tells it. */
export function wordsOf(error: unknown): string {
  const known = words[codeOf(error)];
  if (known) return known;
  const message = error instanceof Error ? error.message : String(error);
  return `Excel could not do that${message ? `. It says: ${message}` : "."}`;
}

/** Does a thing and tells how it ended: nothing is thrown past here. */
export async function tried<E extends Ended>(work: () => Promise<E>): Promise<E | Extract<Ended, { done: false }>> {
  try {
    return await work();
  } catch (error) {
    return { done: false, words: wordsOf(error) };
  }
}

import type { Cell, Outcome } from "./outcome";

/** One call that a cell made: what the pane explains. */
export interface Call {
  readonly name: string;
  readonly cells: readonly (readonly (readonly Cell[])[] | undefined)[];
  readonly answer: readonly (readonly Outcome[])[];
}

/** The cell or range the person has selected. */
export interface Selection {
  /** As people write it: "Blanks!D4" or "Blanks!D4:D103". */
  readonly address: string;
  /** The formula of its first cell, or the one that spills into it; "" where there is none. */
  readonly formula: string;
  /** Which cell of that formula's answer it is. */
  readonly row: number;
  readonly column: number;
  /** Calls of that formula, newest last; undefined where it was not calculated in this session or may be stale. */
  readonly calls: readonly Call[] | undefined;
}

/** How an action ended, in words for a person. */
export type Ended = { readonly done: true; readonly words?: string } | { readonly done: false; readonly words: string };

/** How many, for a sentence in one of these: "one cell is", "3 cells are". */
export const counted = (count: number, one: string, more: string): string => (count === 1 ? `one ${one}` : `${count} ${more}`);

/** How an answer looks on the sheet: a number format for each of its columns, and how many rows it fills. */
export interface Look {
  readonly formats: readonly string[];
  readonly rows: number;
}

/** A long operation: its progress from 0 to 1, and the signal to stop it. */
export interface Work {
  readonly progress: (share: number) => void;
  readonly stop: AbortSignal;
}

/** Cells as they would be typed, formulas with their equals sign; null leaves a cell as it is. */
export interface Block {
  /** "'Run Log'!A12:N12" */
  readonly at: string;
  readonly cells: readonly (readonly (string | number | boolean | null)[])[];
}

/** What the pane may ask of a spreadsheet. Every answer is a promise; nothing throws, what fails says so in words. */
export interface SheetHost {
  readonly name: "Excel" | "page";
  /** False where a pane cannot hand a file to the browser's own saving. */
  readonly savesFiles?: boolean;
  /** True where keeping a document in the workbook, or inserting sheets, clears the host's Undo. */
  readonly endsUndo?: boolean;
  /** Identifies the workbook, where the host tells them apart: stable across reloads. */
  workbook?(): string;
  /** Warnings about this workbook and this host, in words. */
  warnings?(): Promise<readonly string[]>;
  /** A formula as a person types it in this host, where its separators differ. */
  typedThere?(): Promise<(formula: string) => string>;
  /** What is selected, or the cell of a reference as if it were. */
  selection(reference?: string): Promise<Selection | undefined>;
  /** Calls back on every change of the selection or of the selected cell; the function returned stops that. */
  watch(changed: () => void): () => void;
  /** Calls back when the workbook shown was replaced, and says whether by another one; the function returned stops that. Left out where this cannot happen. */
  replaced?(changed: (other: boolean) => void): () => void;
  /** The cells of a range or of a named one; undefined where there is none, or where it is too large to read. */
  read(reference: string): Promise<readonly (readonly Cell[])[] | undefined>;
  /** The same cells as they were typed, with their address; undefined as above. */
  contents(reference: string): Promise<Block | undefined>;
  /** Writes blocks of cells, all or none; `before` holds their former content, to restore it. */
  put(blocks: readonly Block[]): Promise<Ended & { readonly before?: readonly Block[] }>;
  /** Writes a formula into the selected cell; over a filled one only when told to. */
  write(formula: string, look: Look, over: boolean): Promise<Ended & { readonly filled?: boolean }>;
  /** Recalculates the selected cell. */
  recalculate(): Promise<Ended>;
  /** Inserts the sheets of a workbook file; a name that is taken gets a number. */
  insert(file: Uint8Array, sheets: readonly string[], work: Work): Promise<Ended>;
  /** Opens a workbook file as a new one; a host that names workbooks gives it the name. */
  open(file: Uint8Array, name: string): Promise<Ended>;
  /** Puts PORE formulas that show #NAME? in again. */
  reenter(where: "selection" | "workbook", work: Work): Promise<Ended>;
  /** A copy of this workbook in which PORE cells are their values. */
  copyWithValues(work: Work): Promise<Ended>;
  /** Whether the pane opens with this workbook; undefined where the host cannot do that. */
  readonly opensWithWorkbook?: { get(): Promise<boolean>; set(on: boolean): Promise<Ended> };
  /**
   * A document kept inside the workbook, as text, by its namespace; undefined where there is none. A workbook that cannot be
   * asked just now rejects with words: nothing may be taken for missing and written over.
   */
  readPart(namespace: string): Promise<string | undefined>;
  writePart(namespace: string, xml: string): Promise<Ended>;
  /** Waits until the person pauses or leaves, where keeping a part ends Undo: it is done seldom there. */
  readonly pause?: () => Promise<void>;
  /** Puts rows of text on a new sheet, never as formulas; how it looks stands in listsheet.ts. */
  printSheet(title: string, rows: readonly (readonly string[])[]): Promise<Ended>;
}

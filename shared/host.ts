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

/** A long piece of work: how far it is, from 0 to 1, and whether the person has had enough of it. */
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
  /** Keeping a document in the workbook, or inserting sheets, ends what can be undone. */
  readonly endsUndo?: boolean;
  /** Which workbook this is, where the host tells them apart: the same one has the same mark the next time. */
  workbook?(): string;
  /** What a person must know of this workbook and this host before trusting either, in words. */
  warnings?(): Promise<readonly string[]>;
  /** How a person types a formula there, where that differs from how it is written here. */
  typedThere?(): Promise<(formula: string) => string>;
  /** What is selected, or the cell of a reference as if it were. */
  selection(reference?: string): Promise<Selection | undefined>;
  /** Tells every change of selection or of the selected cell; the answer stops it. */
  watch(changed: () => void): () => void;
  /** Tells that a workbook was put in the place of the one shown, and whether it is another one, in a host where this happens; the answer stops it. */
  replaced?(changed: (other: boolean) => void): () => void;
  /** The cells of a range or of a named one; undefined where there is none, or where it is too large to read. */
  read(reference: string): Promise<readonly (readonly Cell[])[] | undefined>;
  /** The same cells as they were typed, with their address; undefined as above. */
  contents(reference: string): Promise<Block | undefined>;
  /** Writes blocks of cells, all or none; `before` has what stood there, to be put back. */
  put(blocks: readonly Block[]): Promise<Ended & { readonly before?: readonly Block[] }>;
  /** Writes a formula into the selected cell; over a filled one only when told to. */
  write(formula: string, look: Look, over: boolean): Promise<Ended & { readonly filled?: boolean }>;
  /** Has the selected cell calculated again. */
  recalculate(): Promise<Ended>;
  /** Inserts the sheets of a workbook file; a name that is taken gets a number. */
  insert(file: Uint8Array, sheets: readonly string[], work: Work): Promise<Ended>;
  /** Opens a workbook file as a new one; a host that names workbooks gives it the name. */
  open(file: Uint8Array, name: string): Promise<Ended>;
  /** Puts PORE formulas that show #NAME? in again. */
  reenter(where: "selection" | "workbook", work: Work): Promise<Ended>;
  /** A copy of this workbook in which PORE cells are their values. */
  copyWithValues(work: Work): Promise<Ended>;
  /** Whether the pane opens with this workbook; undefined where the host has no such thing. */
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

import { addressOf, atOf, blockOf, sizeOf } from "./address";
import type { FileCell, FileFormula, FileRow } from "./filerow";
import { damagedPart, scan, type Tag } from "./scan";
import { Unreadable } from "./unzip";
import { isTrue, unescaped } from "./xml";

export type { FileCell, FileFormula, FileRow } from "./filerow";

/** More cells than these keep a page busy for too long. */
export const mostCells = 2_000_000;

/** How far a sheet reaches in every program. */
const mostRows = 1_048_576;
const mostColumns = 16_384;

export const tooManyCells = () => new Unreadable("it holds more than two million cells");

/** Cells that one formula may fill. */
const most = 1_000_000;

function formulaOf(tag: Tag, end: number, text: string, dynamic: boolean): FileFormula | undefined {
  const [t = "plain", ref, si] = [tag.attribute("t"), tag.attribute("ref"), tag.attribute("si")];
  const kind = t === "array" || t === "shared" ? t : t === "plain" || t === "normal" ? "plain" : "other";
  if (kind === "plain" && !text.trim()) return undefined;
  const block = ref && kind !== "other" && kind !== "plain" ? blockOf(ref) : undefined;
  if (kind === "array" && block && sizeOf(block) > most) throw new Unreadable(`one of its formulas fills more than ${most} cells (${ref})`);
  return { text: unescaped(text), kind, block, dynamic, shared: kind === "shared" ? si : undefined, start: tag.start, end };
}

function heldBy(type: string, raw: string | undefined, inner: string | undefined, strings: readonly string[]): string | undefined {
  if (type === "inlineStr") return inner === undefined ? undefined : unescaped(inner);
  if (raw === undefined) return undefined;
  if (type === "s") return strings[Number(raw)] ?? "";
  return type === "str" ? unescaped(raw) : raw;
}

type Draft<T> = { -readonly [K in keyof T]: T[K] };

/** Reads the rows of a sheet with their cells as it meets them; one without an address stands right after the one before. */
class Rows {
  readonly found: FileRow[] = [];
  private depth = 0;
  private inData = false;
  private count = 0;
  private row: (Draft<FileRow> & { cells: FileCell[] }) | undefined;
  private cell: Draft<FileCell> | undefined;
  private dynamic = false;
  private isInline = false;
  /** How to pronounce it is not part of a text. */
  private spoken = 0;
  private raw: string | undefined;
  private inner: string | undefined;
  private words = "";

  constructor(private readonly strings: readonly string[]) {}

  readonly open = (tag: Tag): void => {
    const depth = ++this.depth;
    if (depth === 2) this.inData = tag.local === "sheetData";
    if (!this.inData || depth < 3) return;
    if (depth === 3) this.openRow(tag);
    else if (depth === 4) this.openCell(tag);
    else if (tag.local === "rPh") this.spoken ||= depth;
    else if (depth === 5 && tag.local === "is") this.isInline = true;
    if (depth > 4 && !this.spoken) this.words = "";
  };

  readonly text = (more: string): void => {
    if (this.cell && !this.spoken) this.words += more;
  };

  readonly close = (tag: Tag, end: number): void => {
    const depth = this.depth--;
    if (!this.inData || depth < 3) return;
    if (depth === 3) {
      if (this.row) this.row.end = end;
      this.row = undefined;
    } else if (depth === 4) this.closeCell(end);
    else if (this.cell) this.closeInner(tag, depth, end, this.cell);
    if (this.spoken === depth) this.spoken = 0;
  };

  private openRow(tag: Tag): void {
    if (tag.local !== "row") return;
    const { start, open, closed, prefix } = tag;
    const r = tag.attribute("r");
    const height = tag.attribute("ht");
    this.row = {
      start,
      end: open,
      open,
      closed,
      prefix,
      row: r ? Number(r) - 1 : (this.found.at(-1)?.row ?? -1) + 1,
      hidden: isTrue(tag.attribute("hidden")),
      height: height === undefined ? undefined : Number(height),
      fixed: isTrue(tag.attribute("customHeight")),
      look: isTrue(tag.attribute("customFormat")) ? Number(tag.attribute("s") ?? 0) : 0,
      level: Number(tag.attribute("outlineLevel") ?? 0),
      folds: isTrue(tag.attribute("collapsed")),
      cells: [],
    };
    this.found.push(this.row);
  }

  private openCell(tag: Tag): void {
    if (tag.local !== "c" || !this.row) return;
    if (++this.count > mostCells) throw tooManyCells();
    const { start, open, closed, prefix } = tag;
    const { cells } = this.row;
    const r = tag.attribute("r");
    if (r !== undefined && !any.test(r)) throw damagedPart();
    const { row, column } = r ? atOf(r) : { row: this.row.row, column: (cells.at(-1)?.column ?? -1) + 1 };
    if (row < 0 || row >= mostRows || column >= mostColumns) throw damagedPart();
    this.dynamic = tag.attribute("cm") !== undefined;
    this.raw = this.inner = undefined;
    this.cell = {
      start,
      end: open,
      open,
      closed,
      prefix,
      row,
      column,
      address: r && plain.test(r) ? r : addressOf({ row, column }),
      type: tag.attribute("t") ?? "n",
      look: Number(tag.attribute("s") ?? 0),
      value: undefined,
      shown: undefined,
      formula: undefined,
    };
    cells.push(this.cell);
  }

  private closeCell(end: number): void {
    if (!this.cell) return;
    this.cell.value = heldBy(this.cell.type, this.raw, this.inner, this.strings);
    this.cell.end = end;
    this.cell = undefined;
  }

  private closeInner(tag: Tag, depth: number, end: number, cell: Draft<FileCell>): void {
    const { local, start } = tag;
    if (local === "t" && this.isInline && !this.spoken) this.inner = (this.inner ?? "") + this.words;
    if (depth !== 5) return;
    if (local === "v") this.raw = this.words;
    else if (local === "f") cell.formula = formulaOf(tag, end, this.words, this.dynamic);
    else if (local === "is") {
      this.inner ??= "";
      this.isInline = false;
    }
    if (local === "v" || local === "is") cell.shown = { start, end };
  }
}

/** An address as all programs write it, and as some do. */
const plain = /^[A-Z]{1,3}[1-9]\d*$/;
const any = /^\$?[A-Z]{1,3}\$?\d{1,7}$/i;

/** The rows of a sheet with their cells, read in one pass. */
export function rowsOf(xml: string, strings: readonly string[]): FileRow[] {
  const rows = new Rows(strings);
  scan(xml, rows);
  return rows.found;
}

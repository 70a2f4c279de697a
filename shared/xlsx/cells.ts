import type { XmlElement } from "@rgrove/parse-xml";
import { type At, addressOf, atOf, type Block, blockOf, sizeOf } from "./address";
import { scan, type Tag } from "./scan";
import { Unreadable } from "./unzip";
import { childrenOf, isTrue, nameOf, unescaped } from "./xml";

/** Where something stands in the text of a part. */
export interface Span {
  readonly start: number;
  readonly end: number;
}

/** A formula of a cell as its file keeps it. */
export interface FileFormula extends Span {
  readonly text: string;
  readonly kind: "plain" | "array" | "shared" | "other";
  /** The cells that an array formula fills, or those that share one. */
  readonly block?: Block;
  /** An array formula that fills as many cells as it happens to need. */
  readonly dynamic: boolean;
  readonly shared?: string;
}

/** An element that holds others: its start tag ends at `open`. */
interface Holding extends Span {
  readonly prefix: string;
  readonly open: number;
  readonly closed: boolean;
}

export interface FileCell extends At, Holding {
  readonly address: string;
  readonly type: string;
  /** The number of its look. */
  readonly look: number;
  readonly value: string | undefined;
  /** Where the value stands, with its tags. */
  readonly shown?: Span;
  readonly formula?: FileFormula;
}

export interface FileRow extends Holding {
  readonly row: number;
  readonly hidden: boolean;
  readonly cells: readonly FileCell[];
}

/** The text of a cell or a shared string; how to pronounce it is not part of it. */
function richText(element: XmlElement): string {
  const pieces = childrenOf(element).flatMap((child) =>
    nameOf(child) === "t" ? [child] : nameOf(child) === "r" ? childrenOf(child, "t") : [],
  );
  return unescaped(pieces.map(({ text }) => text).join(""));
}

export const sharedStringsOf = (root: XmlElement): string[] => childrenOf(root, "si").map(richText);

/** Cells that one formula may fill. */
const most = 1_000_000;

function formulaOf(tag: Tag, end: number, text: string, dynamic: boolean): FileFormula | undefined {
  const [t = "plain", ref, si] = ["t", "ref", "si"].map(tag.attribute);
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

/** The rows of a sheet with their cells, read in one pass; one without an address stands right after the one before. */
export function rowsOf(xml: string, strings: readonly string[]): FileRow[] {
  const rows: FileRow[] = [];
  const path: string[] = [];
  let row: (Draft<FileRow> & { cells: FileCell[] }) | undefined;
  let cell: Draft<FileCell> | undefined;
  let dynamic = false;
  let raw: string | undefined;
  let inner: string | undefined;
  let text = "";
  const inData = () => path[1] === "sheetData";
  scan(xml, {
    open(tag) {
      path.push(tag.local);
      if (!inData()) return;
      const { start, open, closed, prefix } = tag;
      const held = { start, end: open, open, closed, prefix };
      if (path.length === 3 && tag.local === "row") {
        const r = tag.attribute("r");
        const number = r ? Number(r) - 1 : (rows.at(-1)?.row ?? -1) + 1;
        row = { ...held, row: number, hidden: isTrue(tag.attribute("hidden")), cells: [] };
        rows.push(row);
      } else if (path.length === 4 && tag.local === "c" && row) {
        const r = tag.attribute("r");
        const at = r ? atOf(r) : { row: row.row, column: (row.cells.at(-1)?.column ?? -1) + 1 };
        dynamic = tag.attribute("cm") !== undefined;
        raw = inner = undefined;
        cell = {
          ...held,
          ...at,
          address: addressOf(at),
          type: tag.attribute("t") ?? "n",
          look: Number(tag.attribute("s") ?? 0),
          value: undefined,
        };
        row.cells.push(cell);
      }
      // How to pronounce it is not part of a text.
      if (path.length > 4 && (tag.local === "v" || tag.local === "f" || tag.local === "t") && !path.includes("rPh")) text = "";
    },
    text(more) {
      if (cell) text += more;
    },
    close(tag, end) {
      if (inData() && cell) {
        if (path.length === 5 && tag.local === "v") {
          raw = text;
          cell.shown = { start: tag.start, end };
        } else if (path.length === 5 && tag.local === "is") {
          inner ??= "";
          cell.shown = { start: tag.start, end };
        } else if (path.length === 5 && tag.local === "f") cell.formula = formulaOf(tag, end, text, dynamic);
        else if (tag.local === "t" && path[4] === "is" && !path.includes("rPh")) inner = (inner ?? "") + text;
        else if (path.length === 4 && tag.local === "c") {
          cell.value = heldBy(cell.type, raw, inner, strings);
          cell.end = end;
          cell = undefined;
        }
      } else if (inData() && row && path.length === 3 && tag.local === "row") row.end = end;
      path.pop();
    },
  });
  return rows;
}

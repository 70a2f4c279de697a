import type { XmlElement } from "@rgrove/parse-xml";
import { type At, atOf, type Block, blockOf, sizeOf } from "./address";
import { Unreadable } from "./unzip";
import { childOf, childrenOf, isTrue, nameOf, unescaped } from "./xml";

/** A formula of a cell as its file keeps it. */
export interface FileFormula {
  readonly text: string;
  readonly kind: "plain" | "array" | "shared" | "other";
  /** The cells that an array formula fills. */
  readonly block?: Block;
  /** An array formula that fills as many cells as it happens to need. */
  readonly dynamic: boolean;
  readonly shared?: string;
}

export interface FileCell extends At {
  readonly address: string;
  readonly element: XmlElement;
  readonly type: string;
  readonly value: string | undefined;
  readonly formula?: FileFormula;
}

export interface FileRow {
  readonly row: number;
  readonly element: XmlElement;
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

function formulaOf(cell: XmlElement): FileFormula | undefined {
  const element = childOf(cell, "f");
  if (!element) return undefined;
  const { t = "plain", ref, si } = element.attributes;
  const kind = t === "array" || t === "shared" ? t : t === "plain" || t === "normal" ? "plain" : "other";
  if (kind === "plain" && !element.text.trim()) return undefined;
  const block = kind === "array" && ref ? blockOf(ref) : undefined;
  if (block && sizeOf(block) > most) throw new Unreadable(`one of its formulas fills more than ${most} cells (${ref})`);
  return {
    text: unescaped(element.text),
    kind,
    block,
    dynamic: cell.attributes.cm !== undefined,
    shared: kind === "shared" ? si : undefined,
  };
}

function heldBy(cell: XmlElement, type: string, strings: readonly string[]): string | undefined {
  if (type === "inlineStr") {
    const inner = childOf(cell, "is");
    return inner && richText(inner);
  }
  const value = childOf(cell, "v");
  if (!value) return undefined;
  if (type === "s") return strings[Number(value.text)] ?? "";
  return type === "str" ? unescaped(value.text) : value.text;
}

/** The rows of a sheet with their cells; one without an address stands right after the one before. */
export function rowsOf(root: XmlElement, strings: readonly string[]): FileRow[] {
  const data = childOf(root, "sheetData");
  let row = -1;
  return (data ? childrenOf(data, "row") : []).map((element) => {
    row = element.attributes.r ? Number(element.attributes.r) - 1 : row + 1;
    let column = -1;
    const cells = childrenOf(element, "c").map((cell): FileCell => {
      const at = cell.attributes.r ? atOf(cell.attributes.r) : { row, column: column + 1 };
      column = at.column;
      const type = cell.attributes.t ?? "n";
      return {
        ...at,
        address: cell.attributes.r ?? "",
        element: cell,
        type,
        value: heldBy(cell, type, strings),
        formula: formulaOf(cell),
      };
    });
    return { row, element, hidden: isTrue(element.attributes.hidden), cells };
  });
}

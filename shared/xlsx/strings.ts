import type { XmlElement } from "@rgrove/parse-xml";
import { childrenOf, nameOf, unescaped } from "./xml";

/** The text of a cell or a shared string, without its phonetic runs. */
function richText(element: XmlElement): string {
  const pieces = childrenOf(element).flatMap((child) =>
    nameOf(child) === "t" ? [child] : nameOf(child) === "r" ? childrenOf(child, "t") : [],
  );
  return unescaped(pieces.map(({ text }) => text).join(""));
}

export const sharedStringsOf = (root: XmlElement): string[] => childrenOf(root, "si").map(richText);

import type { XmlElement } from "@rgrove/parse-xml";
import { addressOf, type Block, blockOf } from "../../../shared/xlsx/address";
import { rowsOf } from "../../../shared/xlsx/cells";
import { joined, tokensOf } from "../../../shared/xlsx/tokens";
import { childOf, childrenOf, nameOf } from "../../../shared/xlsx/xml";

/** The cells of a file with their looks, as an independent reader sees them. */

export type Facts = Record<string, unknown>;

const builtIn: Readonly<Record<string, string>> = { 0: "General", 1: "0", 2: "0.00", 3: "#,##0", 4: "#,##0.00", 9: "0%", 10: "0.00%" };

const colourOf = (parent: XmlElement | undefined, name: string): string | undefined => {
  const rgb = parent && childOf(parent, name)?.attributes.rgb;
  return rgb?.slice(-6).toUpperCase();
};
export const has = (parent: XmlElement, name: string): boolean => childOf(parent, name) !== undefined;

/** What an element says, its own text and elements included. */
export const said = (element: XmlElement): string =>
  `${nameOf(element)}${JSON.stringify(Object.entries(element.attributes).sort())}(${childrenOf(element).map(said).join(",") || element.text.trim()})`;

export interface Styles {
  readonly cell: (index: number) => Facts & { readonly sides: Readonly<Record<string, string | undefined>> };
  readonly rule: (index: number) => Facts;
}

export function stylesOf(root: XmlElement): Styles {
  const list = (name: string) => childrenOf(childOf(root, name) ?? root, undefined);
  const [fonts, fills, borders, cells, rules] = ["fonts", "fills", "borders", "cellXfs", "dxfs"].map(list);
  const formats = new Map(list("numFmts").map(({ attributes }) => [attributes.numFmtId, attributes.formatCode]));
  // A font that says no size or typeface has those of the first.
  const usual = (font: XmlElement, name: string) => (childOf(font, name) ?? childOf(fonts[0], name))?.attributes.val;
  const fontOf = (font: XmlElement) => ({
    marks: ["b", "i", "u", "strike"].filter((name) => has(font, name)).join(""),
    colour: colourOf(font, "color") ?? "000000",
  });
  const fillOf = (fill: XmlElement, name: string) => colourOf(childOf(fill, "patternFill"), name);
  const sideOf = (border: XmlElement, name: string) => {
    const side = childOf(border, name);
    return side?.attributes.style && `${side.attributes.style} ${colourOf(side, "color")}`;
  };
  return {
    cell(index) {
      const { attributes, ...cell } = cells[index];
      const font = fonts[Number(attributes.fontId)];
      const border = borders[Number(attributes.borderId)];
      const { wrapText, horizontal, vertical } = childOf(cell as XmlElement, "alignment")?.attributes ?? {};
      return {
        format: formats.get(attributes.numFmtId) ?? builtIn[attributes.numFmtId] ?? attributes.numFmtId,
        ...fontOf(font),
        size: usual(font, "sz"),
        typeface: usual(font, "name"),
        fill: fillOf(fills[Number(attributes.fillId)], "fgColor"),
        alignment: `${horizontal ?? ""} ${vertical ?? ""} ${wrapText === "1" || wrapText === "true" ? "wrap" : ""}`,
        sides: Object.fromEntries(["left", "right", "top", "bottom"].map((name) => [name, sideOf(border, name)])),
      };
    },
    rule(index) {
      const font = childOf(rules[index], "font");
      const fill = childOf(rules[index], "fill");
      return { ...(font && fontOf(font)), fill: fill && fillOf(fill, "bgColor") };
    },
  };
}

export const linesOf = (root: XmlElement, name: string): string[] => childrenOf(root, name).map(said);

type Looks = ReadonlyMap<string, ReturnType<Styles["cell"]>>;

/** The edges of a cell, or of the cells merged with it. One between two cells belongs to both, and the heavier is seen. */
function edges({ top, left, bottom, right }: Block, looks: Looks): Facts {
  const side = (row: number, column: number, name: string) => looks.get(addressOf({ row, column }))?.sides[name];
  // "medium" comes before "thin".
  const heavier = (...sides: readonly (string | undefined)[]) => sides.filter((one) => one !== undefined).sort()[0];
  return {
    left: heavier(side(top, left, "left"), side(top, left - 1, "right")),
    right: heavier(side(top, right, "right"), side(top, right + 1, "left")),
    top: heavier(side(top, left, "top"), side(top - 1, left, "bottom")),
    bottom: heavier(side(bottom, left, "bottom"), side(bottom + 1, left, "top")),
  };
}

/** However a number is spelt in it. */
const plainFormula = (text: string): string =>
  joined(tokensOf(text).map((token) => (token.kind === "number" ? { ...token, text: String(Number(token.text)) } : token)));

export function cellsIn(xml: string, root: XmlElement, strings: readonly string[], styles: Styles): Facts {
  const cells = rowsOf(xml, strings).flatMap((row) => row.cells);
  const looks = new Map(cells.map((cell) => [addressOf(cell), styles.cell(cell.look)]));
  const merged = childrenOf(childOf(root, "mergeCells") ?? root, "mergeCell").map(({ attributes }) => blockOf(attributes.ref));
  const found: Facts = {};
  for (const cell of cells) {
    const merge = merged.find(
      ({ top, left, bottom, right }) => cell.row >= top && cell.row <= bottom && cell.column >= left && cell.column <= right,
    );
    const { sides: _, ...look } = looks.get(addressOf(cell))!;
    const { formula, value, type } = cell;
    // A blank cell may stand there for the edge of its neighbour alone.
    const isBare = !formula && value === undefined && look.fill === undefined && look.alignment === "  " && look.format === "General";
    // Of merged cells only the first is seen.
    const isUnder = merge && !formula && value === undefined && (cell.row > merge.top || cell.column > merge.left);
    if (isBare || isUnder) continue;
    const number = type === "n" && value !== undefined && value !== "";
    found[addressOf(cell)] = {
      formula: formula && plainFormula(formula.text),
      fills: formula?.block && `${formula.block.bottom - formula.block.top + 1} × ${formula.block.right - formula.block.left + 1}`,
      type: type === "inlineStr" || type === "s" ? "str" : type,
      value: number ? Number(value) : value === "" ? undefined : value,
      look,
      edges: edges(merge ?? { top: cell.row, bottom: cell.row, left: cell.column, right: cell.column }, looks),
    };
  }
  return found;
}

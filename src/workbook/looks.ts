import type { Alert, Look } from "./book";

/** Fill of a fixed value. */
export const frozenFill = "E8ECEF";

/** Palette: ink on paper, a walnut accent, and a pale fill for input cells. */
const color = {
  ink: "2B2A28",
  quiet: "6B6560",
  walnut: "5A3E2B",
  wash: "FBF3DF",
  typed: "1F4E79",
  line: "D8CFC0",
  /** Bottom border of input cells: contrast 3 to 1 against its fill and the paper. */
  edge: "8A7550",
  paper: "FFFFFF",
  warning: "8A2B1B",
  warningWash: "FCEDEA",
  bad: "F6D5CF",
  attention: "FBE7B8",
  good: "DCEBD3",
  button: "00676D",
  buttonWash: "D9EDEE",
  buttonInk: "00484C",
  frozen: frozenFill,
};

export interface Style {
  readonly font?: {
    readonly name?: string;
    readonly bold?: boolean;
    readonly italic?: boolean;
    readonly underline?: boolean;
    readonly size?: number;
    readonly color?: { readonly rgb: string };
  };
  readonly fill?: {
    readonly type: "pattern";
    readonly pattern: "solid";
    readonly fgColor: { readonly rgb: string };
    readonly bgColor?: { readonly rgb: string };
  };
  readonly border?: Readonly<Record<string, { readonly style: "thin" | "medium"; readonly color: { readonly rgb: string } }>>;
  readonly alignment?: {
    readonly wrapText?: boolean;
    readonly vertical?: "top" | "center";
    readonly horizontal?: "left" | "center" | "right";
    readonly indent?: number;
  };
  readonly numFmt?: string;
}

/** Column widths count digits of this font. */
export const measure = { name: "Calibri", size: 11 };
/** Cells are written a little smaller, so that wider fonts have room in them where there is no Calibri. */
const typeface = { ...measure, size: 10 };

type Weight = Omit<NonNullable<Style["font"]>, "color" | "name">;
/** Every font states name and size: without them a program may take any other. */
const ink = (rgb: string, more: Weight = {}) => ({ ...typeface, ...more, color: { rgb } });
const tint = (rgb: string, more: Weight = {}) => ({ ...more, color: { rgb } });
const solid = (rgb: string) => ({ type: "pattern", pattern: "solid", fgColor: { rgb }, bgColor: { rgb } }) as const;
const side = { style: "thin", color: { rgb: color.line } } as const;
const box = { top: side, right: side, bottom: side, left: side };
const firm = { style: "medium", color: { rgb: color.buttonInk } } as const;
const buttonBox = { top: firm, right: firm, bottom: firm, left: firm };
const typedBox = { ...box, bottom: { style: "thin", color: { rgb: color.edge } } } as const;
const wrap = { wrapText: true, vertical: "top" } as const;
const top = { vertical: "top" } as const;

const looks: Readonly<Record<Look, Style>> = {
  title: { font: ink(color.walnut, { bold: true, size: 20 }) },
  lead: { font: ink(color.ink), alignment: wrap },
  bar: { font: ink(color.paper, { bold: true }), fill: solid(color.walnut), alignment: { vertical: "center" } },
  heading: { font: ink(color.paper, { bold: true }), fill: solid(color.walnut), alignment: { wrapText: true, vertical: "center" } },
  label: { font: ink(color.ink), alignment: wrap },
  unit: { font: ink(color.quiet), alignment: top },
  note: { font: ink(color.quiet), alignment: wrap },
  caution: { font: ink(color.warning), fill: solid(color.warningWash), alignment: wrap },
  link: { font: ink(color.typed, { underline: true }), alignment: top },
  // Dark on pale: a program that gives links its own blue can still be read.
  button: {
    font: ink(color.buttonInk, { bold: true, size: 12 }),
    fill: solid(color.buttonWash),
    border: buttonBox,
    alignment: { horizontal: "center", vertical: "center", wrapText: true },
  },
  step: { font: ink(color.typed, { underline: true }), alignment: { vertical: "center", indent: 1 } },
  // A bar is so many full blocks: it prints, and needs no color.
  bars: { font: ink(color.button, { size: 8 }), alignment: { vertical: "center" } },
  input: { font: ink(color.typed), fill: solid(color.wash), border: typedBox, alignment: wrap },
  result: { font: ink(color.ink), border: box, alignment: top },
  refused: { font: ink(color.warning), border: box, alignment: { ...wrap, horizontal: "left" } },
  words: { font: ink(color.ink), border: box, alignment: { ...wrap, horizontal: "left" } },
  alarm: { font: ink(color.warning, { bold: true }), border: box, alignment: { ...wrap, horizontal: "left" } },
  strong: { font: ink(color.ink, { bold: true }), border: box, alignment: { ...wrap, horizontal: "left" } },
  total: {
    font: ink(color.ink, { bold: true }),
    border: { ...box, top: { style: "medium", color: { rgb: color.walnut } } },
    alignment: top,
  },
  figure: { font: ink(color.ink, { bold: true }), border: box, alignment: top },
  frozen: { font: ink(color.ink), fill: solid(color.frozen), border: box, alignment: top },
  tick: { font: ink(color.typed), fill: solid(color.wash), border: typedBox, alignment: { horizontal: "center", vertical: "center" } },
  item: { font: ink(color.ink), border: box, alignment: { vertical: "center" } },
  itemNote: { font: ink(color.quiet), alignment: { vertical: "center" } },
  big: { font: ink(color.ink, { size: 18 }), border: box, alignment: wrap },
  // Words beside a column of numbers keep clear of them.
  bigWords: { font: ink(color.ink, { size: 18 }), border: box, alignment: { ...wrap, horizontal: "left", indent: 1 } },
  bigNote: { font: ink(color.quiet, { size: 14 }), alignment: wrap },
  bigCaution: { font: ink(color.warning, { size: 16 }), fill: solid(color.warningWash), alignment: wrap },
  labelHead: { font: ink(color.ink, { bold: true, size: 11 }), alignment: { vertical: "center", indent: 1 } },
  labelLine: { font: ink(color.ink, { size: 9 }), alignment: { ...wrap, indent: 1 } },
  bigHeading: {
    font: ink(color.paper, { bold: true, size: 16 }),
    fill: solid(color.walnut),
    alignment: { wrapText: true, vertical: "center" },
  },
};

/** Styles of columns of numbers: values, heading and unit are right-aligned, words left-aligned. */
const columned: readonly (Look | undefined)[] = [
  "input",
  "result",
  "words",
  "frozen",
  "total",
  "figure",
  "big",
  "heading",
  "bigHeading",
  "unit",
];
const isOfNumbers = (format: string | undefined) => format !== undefined && format !== "General";

/** A fixed value keeps the font size and wrapping of the cell that it replaces. */
export function styleOf(look: Look | undefined, format: string | undefined, instead?: Look): Style {
  const own = look ? looks[look] : {};
  const kept = instead ? looks[instead] : own;
  return {
    ...own,
    ...(kept.font?.size && own.font ? { font: { ...own.font, size: kept.font.size } } : {}),
    ...(kept.alignment
      ? { alignment: { ...kept.alignment, ...(isOfNumbers(format) && columned.includes(instead ?? look) ? { horizontal: "right" } : {}) } }
      : {}),
    ...(format ? { numFmt: format } : {}),
  };
}

export const alertStyles: Readonly<Record<Alert["as"], Style>> = {
  bad: { font: tint(color.warning, { bold: true }), fill: solid(color.bad) },
  attention: { font: tint("6B4E00", { bold: true }), fill: solid(color.attention) },
  good: { font: tint("2F5D1E"), fill: solid(color.good) },
  // One marked cell is enough for the row.
  unseen: { font: tint(color.bad), fill: solid(color.bad) },
};

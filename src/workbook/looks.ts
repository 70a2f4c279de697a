import type { Alert, Look } from "./book";

/** Ink on paper, a walnut accent, and a pale wash where something is to be typed. */
const colour = {
  ink: "2B2A28",
  quiet: "6B6560",
  walnut: "5A3E2B",
  wash: "FBF3DF",
  line: "D8CFC0",
  paper: "FFFFFF",
  bad: "F6D5CF",
  attention: "FBE7B8",
  good: "DCEBD3",
  frozen: "EEF1F3",
};

export interface Style {
  readonly font?: { readonly bold?: boolean; readonly italic?: boolean; readonly size?: number; readonly color?: { readonly rgb: string } };
  readonly fill?: {
    readonly type: "pattern";
    readonly pattern: "solid";
    readonly fgColor: { readonly rgb: string };
    readonly bgColor?: { readonly rgb: string };
  };
  readonly border?: Readonly<Record<string, { readonly style: "thin" | "medium"; readonly color: { readonly rgb: string } }>>;
  readonly alignment?: { readonly wrapText?: boolean; readonly vertical?: "top" | "center"; readonly horizontal?: "left" | "center" };
  readonly numFmt?: string;
}

const ink = (rgb: string, more: Omit<NonNullable<Style["font"]>, "color"> = {}) => ({ ...more, color: { rgb } });
const solid = (rgb: string) => ({ type: "pattern", pattern: "solid", fgColor: { rgb }, bgColor: { rgb } }) as const;
const side = { style: "thin", color: { rgb: colour.line } } as const;
const box = { top: side, right: side, bottom: side, left: side };
const wrap = { wrapText: true, vertical: "top" } as const;

const looks: Readonly<Record<Look, Style>> = {
  title: { font: ink(colour.walnut, { bold: true, size: 20 }) },
  lead: { font: ink(colour.ink, { size: 12 }), alignment: wrap },
  heading: { font: ink(colour.paper, { bold: true }), fill: solid(colour.walnut), alignment: { ...wrap, vertical: "center" } },
  label: { font: ink(colour.ink), alignment: wrap },
  unit: { font: ink(colour.quiet) },
  note: { font: ink(colour.quiet, { italic: true }), alignment: wrap },
  caution: { font: ink("8A2B1B", { bold: true }), fill: solid("FCEDEA"), alignment: wrap },
  input: { font: ink("1F4E79"), fill: solid(colour.wash), border: box, alignment: { vertical: "top" } },
  result: { font: ink(colour.ink), border: box, alignment: { vertical: "top" } },
  total: { font: ink(colour.ink, { bold: true }), border: { ...box, top: { style: "medium", color: { rgb: colour.walnut } } } },
  frozen: { font: ink(colour.ink, { italic: true }), fill: solid(colour.frozen), border: box, alignment: { vertical: "top" } },
  tick: { font: ink("1F4E79", { size: 12 }), fill: solid(colour.wash), border: box, alignment: { horizontal: "center" } },
  big: { font: ink(colour.ink, { size: 16 }), border: box },
};

export const styleOf = (look: Look | undefined, format: string | undefined): Style => ({
  ...(look ? looks[look] : {}),
  ...(format ? { numFmt: format } : {}),
});

export const alertStyles: Readonly<Record<Alert["as"], Style>> = {
  bad: { font: ink("8A2B1B", { bold: true }), fill: solid(colour.bad) },
  attention: { font: ink("6B4E00", { bold: true }), fill: solid(colour.attention) },
  good: { font: ink("2F5D1E"), fill: solid(colour.good) },
};

import type { System } from "../../shared/unittable";

/** How labels lie on their sheet; lengths in inches or millimeters. */
export interface LabelSizes {
  readonly across: number;
  readonly down: number;
  readonly width: number;
  readonly height: number;
  readonly gapAcross: number;
  readonly gapDown: number;
  readonly top: number;
  readonly left: number;
}

export const sizeNames: Readonly<Record<keyof LabelSizes, string>> = {
  across: "labels across",
  down: "labels down",
  width: "label width",
  height: "label height",
  gapAcross: "gap between columns",
  gapDown: "gap between rows",
  top: "margin at the top",
  left: "margin on the left",
};

/** Common sheets of labels in US and in SI units. */
export const commonSizes: Readonly<Record<System, LabelSizes>> = {
  US: { across: 3, down: 10, width: 2.625, height: 1, gapAcross: 0.125, gapDown: 0, top: 0.5, left: 0.1875 },
  SI: { across: 3, down: 8, width: 70, height: 37, gapAcross: 0, gapDown: 0, top: 0.5, left: 0 },
};

export const papers = {
  US: { name: "Letter", unit: "in", width: 8.5, height: 11 },
  SI: { name: "A4", unit: "mm", width: 210, height: 297 },
} as const satisfies Readonly<Record<System, unknown>>;

const slack = 1e-6;
const shown = (length: number) => String(Number(length.toPrecision(4)));

/** The size that does not fit the others, and why; undefined where all fit the sheet. */
export function sizesSlip(sizes: LabelSizes, system: System): { readonly field: keyof LabelSizes; readonly words: string } | undefined {
  const { name, unit, width, height } = papers[system];
  for (const field of ["across", "down"] as const) {
    if (!Number.isInteger(sizes[field]) || sizes[field] < 1 || sizes[field] > 40)
      return { field, words: `How many ${sizeNames[field]}? Type a whole number from 1 to 40.` };
  }
  const wide = sizes.left + sizes.across * sizes.width + (sizes.across - 1) * sizes.gapAcross;
  if (wide > width + slack)
    return { field: "width", words: `${sizes.across} across need ${shown(wide)} ${unit}, and ${name} is ${width} ${unit} wide.` };
  const high = sizes.top + sizes.down * sizes.height + (sizes.down - 1) * sizes.gapDown;
  if (high > height + slack)
    return { field: "height", words: `${sizes.down} down need ${shown(high)} ${unit}, and ${name} is ${height} ${unit} high.` };
  return undefined;
}

/** Where the label with this number, from 0, lies on its sheet. */
export function placeOf(index: number, { across, down, width, height, gapAcross, gapDown, top, left }: LabelSizes) {
  const [column, row] = [index % across, Math.floor(index / across) % down];
  return { sheet: Math.floor(index / (across * down)), x: left + column * (width + gapAcross), y: top + row * (height + gapDown) };
}

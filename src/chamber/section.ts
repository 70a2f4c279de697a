import { type Arg, isBlank, quantity } from "../../shared/argument";
import * as message from "../../shared/message";
import { badInput, type Cell, said, sayIn } from "../../shared/outcome";
import type { Units } from "../../shared/unit";

/** The inside of a chamber seen from above, in meters: a round vessel, or a tray standing inside one. */
export type Section =
  | { readonly shape: "round"; readonly diameter: number }
  | { readonly shape: "rectangle"; readonly length: number; readonly width: number };

const side = (label: string) => quantity("length", label, 6, [0.1, 200]);
const diameter = side("inside diameter of the chamber");
const length = side("length of the tray");
const width = side("width of the tray");

/** "8 x 5 in": a unit behind the second number serves both. */
function fromText(typed: string, units: Units): Section | undefined {
  const sides = typed.split(/(?:[x×*]|by)(?=\s*[\d.½¼¾⅛⅜⅝⅞])/i).map((side) => side.trim());
  if (sides.length !== 2) return undefined;
  const unit = /[^\d\s./½¼¾⅛⅜⅝⅞-].*$/s.exec(sides[1])?.[0] ?? "";
  const first = /[^\d\s./½¼¾⅛⅜⅝⅞-]/.test(sides[0]) ? sides[0] : `${sides[0]} ${unit}`;
  return { shape: "rectangle", length: length.read(first, units), width: width.read(sides[1], units) };
}

function take(cells: readonly (readonly Cell[])[], units: Units): Section {
  const flat = cells.flat();
  if (flat.length === 1) {
    const [only] = flat;
    if (typeof only === "string") {
      const tray = fromText(only.trim(), units);
      if (tray) return tray;
    }
    return { shape: "round", diameter: diameter.read(only, units) };
  }
  if (flat.length !== 2) throw badInput`chamber takes one cell, the inside diameter, or two, the length and width of a tray`;
  const [first, second] = flat;
  if (isBlank(second)) return { shape: "round", diameter: diameter.read(first, units) };
  if (isBlank(first)) throw message.missing(length.label, length.sample(units));
  return { shape: "rectangle", length: length.read(first, units), width: width.read(second, units) };
}

/** A chamber: one cell for a round one, two cells or “8 x 5 in” for a tray inside a round vacuum chamber. */
export const chamberArg: Arg<Section> = {
  ...diameter,
  range: undefined,
  label: "chamber: inside diameter, or length and width of a tray inside it",
  say: (section: Section, units) =>
    section.shape === "round"
      ? sayIn(units, said("length", section.diameter))
      : `${sayIn(units, said("length", section.length))} x ${sayIn(units, said("length", section.width))}`,
  read: (cell, units) => take([[cell]], units),
  take,
};

/** What holds resin and pieces inside the chamber: one cell, a diameter or “8 x 5 in”. */
export const tubArg: Arg<Section> = {
  ...chamberArg,
  label: "tub or jar in the chamber: inside diameter, or length x width",
  take: undefined,
};

/** Floor area in square meters. */
export const areaOf = (section: Section): number =>
  section.shape === "round" ? (Math.PI * section.diameter ** 2) / 4 : section.length * section.width;

import { noAnswer, said, type Trouble } from "../../shared/outcome";
import { areaOf, type Section } from "../chamber/section";

/** What a load is packed into, and how many of them there are. */
export interface Tub {
  readonly section: Section;
  readonly height: number;
  readonly area: number;
  /** How many tubs are under vacuum at once, and how many there are. */
  readonly abreast: number;
  readonly many: number;
  /** The tub is lifted out and soaks beside the chamber; otherwise the chamber itself holds the resin. */
  readonly beside: boolean;
}

/** Radii of the smallest circles known to hold 1 to 7 unit circles, all proved (Graham and others, Discrete Math. 181, 1998). */
const circlesIn = [1, 2, 1 + 2 / Math.sqrt(3), 1 + Math.SQRT2, 1 + Math.sqrt(2 * (1 + 1 / Math.sqrt(5))), 3, 3];

const one = 1 + 1e-9;

interface Given {
  readonly chamber: Section;
  readonly height: number;
  readonly tub?: Section;
  readonly tubHeight?: number;
  readonly tubWall: number;
  readonly tubs?: number;
}

function roundsIn(chamber: Section, outside: number): number {
  if (chamber.shape === "rectangle") return Math.floor((chamber.length / outside) * one) * Math.floor((chamber.width / outside) * one);
  const fits = circlesIn.filter((radii) => radii * outside <= chamber.diameter * one);
  return fits.length;
}

function traysIn(chamber: Section, length: number, width: number): number {
  if (chamber.shape === "round") return Math.hypot(length, width) <= chamber.diameter * one ? 1 : 0;
  const fits = (l: number, w: number) => l <= chamber.length * one && w <= chamber.width * one;
  return fits(length, width) || fits(width, length) ? 1 : 0;
}

const across = (section: Section, wall = 0): [ReturnType<typeof said>, ReturnType<typeof said>?] =>
  section.shape === "round"
    ? [said("length", section.diameter + 2 * wall)]
    : [said("length", section.length + 2 * wall), said("length", section.width + 2 * wall)];

function tooWide(tub: Section, wall: number, chamber: Section): Trouble {
  const [outside, beside] = across(tub, wall);
  const [inside, deep] = across(chamber);
  if (beside && deep) return noAnswer`the tub, ${outside} by ${beside} outside, does not fit in the chamber, ${inside} by ${deep}`;
  if (beside) return noAnswer`the tub, ${outside} by ${beside} outside, does not fit in the chamber, ${inside} inside`;
  if (deep) return noAnswer`the tub, ${outside} outside, does not fit in the chamber, ${inside} by ${deep}`;
  return noAnswer`the tub is wider than the chamber: ${outside} outside, and the chamber is ${inside} inside`;
}

/** The tub that loads are packed into: the chamber itself where none is named. */
export function tubOf({ chamber, height, tub, tubHeight, tubWall, tubs }: Given): Tub {
  if (!tub) return { section: chamber, height, area: areaOf(chamber), abreast: 1, many: 1, beside: false };
  const own = tubHeight ?? height;
  if (own > height * one)
    throw noAnswer`the tub is higher than the chamber: ${said("length", own)}, and the chamber is ${said("length", height)} inside`;
  const stand =
    tub.shape === "round"
      ? roundsIn(chamber, tub.diameter + 2 * tubWall)
      : traysIn(chamber, tub.length + 2 * tubWall, tub.width + 2 * tubWall);
  if (stand === 0) throw tooWide(tub, tubWall, chamber);
  const many = tubs ?? stand;
  return { section: tub, height: own, area: areaOf(tub), abreast: Math.min(stand, many), many, beside: true };
}

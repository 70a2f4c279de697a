import { noAnswer, said, type Trouble } from "../../shared/outcome";
import type { Piece, Way } from "./layers";
import type { Section } from "./section";

interface Case {
  readonly chamber: Section;
  readonly height: number;
  readonly piece: Piece;
  readonly gap: number;
  readonly foamRoom: number;
  readonly cover: number;
  /** Depth that one piece needs, resin and cover included, in each way that the floor has room for. */
  readonly needs: readonly { readonly way: Way; readonly depth: number }[];
}

/** The longest side that lies on the floor of a chamber when the other side is `beside`. */
function across(chamber: Section, gap: number, beside: number): number {
  if (chamber.shape === "round") {
    const free = chamber.diameter - 2 * gap;
    return Math.sqrt(Math.max(0, free ** 2 - beside ** 2));
  }
  const [short, long] = [chamber.length - 2 * gap, chamber.width - 2 * gap].sort((a, b) => a - b);
  return Math.max(0, beside <= short ? long : beside <= long ? short : 0);
}

const tooMuch = { thickness: "thick", width: "wide", length: "long" } as const;

/** Why no piece goes in: the dimension at fault, and how much of it would fit. */
export function misfit({ chamber, height, piece, gap, foamRoom, cover, needs }: Case): Trouble {
  const room = height * (1 - foamRoom);
  if (cover >= room)
    return noAnswer`the height is too small: foam room leaves ${said("length", room)} of ${said("length", height)}, and the cover takes ${said("length", cover)}`;

  if (needs.length === 0) {
    const sides = (["thickness", "width", "length"] as const).map((name) => ({ name, side: piece[name] })).sort((a, b) => a.side - b.side);
    const alone = across(chamber, gap, 0);
    const [{ name, side }, free] = sides[0].side > alone ? [sides[0], alone] : [sides[1], across(chamber, gap, sides[0].side)];
    return noAnswer`the ${name} is too ${tooMuch[name]} for the chamber: ${said("length", side)}, and only ${said("length", free)} is free across the floor`;
  }

  const { way, depth } = needs.reduce((a, b) => (b.depth < a.depth ? b : a));
  const needed = said("length", depth / (1 - foamRoom));
  if (needs.some((other) => other.way.stands !== way.stands))
    return noAnswer`the height is too small: even lying flat, a piece needs ${needed} with cover and foam room, and the chamber has ${said("length", height)}`;
  const others = (["thickness", "width", "length"] as const).filter((name) => name !== way.stands).map((name) => piece[name]);
  const free = said("length", across(chamber, gap, Math.min(...others)));
  return noAnswer`the ${way.stands} is too ${tooMuch[way.stands]} for the chamber: ${said("length", way.height)} standing needs a height of ${needed} with cover and foam room, and lying down only ${free} is free`;
}

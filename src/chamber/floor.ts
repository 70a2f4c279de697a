import { allowance } from "./abreast";
import type { Section } from "./section";

/** 0: rows run along x, 1: along y. */
export type Axis = 0 | 1;

/** The floor of a tub from its middle, `gap` off the wall: how far from the middle rows may reach. */
export interface Floor {
  /** Half the length of a row along the axis whose farther edge lies so far from the middle; negative where none may lie. */
  half(axis: Axis, edge: number): number;
  /** How far from the middle a round floor still has so much to either side. */
  reach(side: number): number;
  /** Half the free width across the rows. */
  across(axis: Axis): number;
  readonly round: boolean;
}

export function floorOf(section: Section, gap: number): Floor {
  if (section.shape === "round") {
    const free = (section.diameter / 2 - gap) * (1 + allowance);
    return {
      round: true,
      across: () => free,
      reach: (side) => Math.sqrt(Math.max(0, free * free - side * side)),
      half: (_, edge) => (edge > free ? -1 : Math.sqrt(free * free - edge * edge)),
    };
  }
  const sides = [section.length, section.width].map((side) => (side / 2 - gap) * (1 + allowance));
  return {
    round: false,
    across: (axis) => sides[1 - axis],
    reach: () => 0,
    half: (axis, edge) => (edge > sides[1 - axis] ? -1 : sides[axis]),
  };
}

import { type SVGTemplateResult, svg } from "lit";
import type { Section } from "../../src/chamber/section";
import { px } from "./drawing";

/** Thickness of walls as they are drawn. */
export const wall = 5;

/** Width and breadth of the floor. */
export const spanOf = (section: Section): readonly [number, number] =>
  section.shape === "round" ? [section.diameter, section.diameter] : [section.length, section.width];

/** The floor with resin on it, seen from above. */
export function floorOf(section: Section, scale: number, cx: number, cy: number): SVGTemplateResult {
  const [width, breadth] = spanOf(section).map((side) => side * scale);
  return section.shape === "round"
    ? svg`<circle class="fluid walled" cx=${px(cx)} cy=${px(cy)} r=${px(width / 2)} />`
    : svg`<rect class="fluid walled" x=${px(cx - width / 2)} y=${px(cy - breadth / 2)} width=${px(width)} height=${px(breadth)} />`;
}

/** Walls and floor, seen from the side: open above. */
export const wallsOf = (left: number, top: number, wide: number, floor: number): SVGTemplateResult =>
  svg`<path class="wall" d=${`M${px(left - wall / 2)} ${px(top)}V${px(floor + wall / 2)}H${px(left + wide + wall / 2)}V${px(top)}`} />`;

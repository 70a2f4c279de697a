import { svg } from "lit";
import { said, sayIn } from "../../shared/outcome";
import type { Units } from "../../shared/unit";
import type { Bath } from "./bath";
import { type Box, cutOf } from "./cut";
import { type Drawing, paper, px } from "./drawing";
import { floorOf, spanOf, wall, wallsOf } from "./vessel";

const tallest = 300;
/** How much of the width the ballast is drawn to cover. */
const plate = 0.84;

/** The chamber cut open: pieces, ballast, fluid line, foam room and lid. */
export function chamberDrawing(bath: Bath, units: Units): Drawing {
  const { section, height, foam, depth, depthAfter, stack = 0, ballast = 0 } = bath;
  const { width, pieces, middle } = cutOf(bath);
  const top = height ?? Math.max(depth, stack + ballast) * 1.25;
  const scale = Math.min((paper - 2 * wall - 30) / spanOf(section)[0], (tallest - 2 * wall) / top);
  const left = (paper - width * scale) / 2;
  const floor = top * scale + 18;
  const x = (m: number) => px(left + (m + width / 2) * scale);
  const y = (m: number) => px(floor - m * scale);
  const long = (m: number) => px(Math.max(0, m * scale));
  const box = (mark: string, { x: bx, y: by, width: w, height: h }: Box) =>
    svg`<rect class=${mark} x=${x(bx)} y=${y(by + h)} width=${long(w)} height=${long(h)} />`;

  const say = (m: number) => sayIn(units, said("length", m));
  const line = (mark: string, m: number) => svg`<line class=${mark} x1=${x(-width / 2)} x2=${x(width / 2)} y1=${y(m)} y2=${y(m)} />`;
  // It lies on the pieces as far as the wall lets it.
  const loose = width * (0.49 - plate / 2);
  const aside = Math.max(-loose, Math.min(loose, middle));
  const wide = 2 * wall + width * scale;
  const legend: [string, string][] = [
    ["wood", bath.places ? "pieces" : pieces.length ? "pieces and ballast, drawn as one block" : ""],
    ["steel", ballast ? "ballast" : ""],
    ["fluid", `resin, ${say(depth)} deep${depthAfter === undefined ? "" : " at the start"}`],
    ["after", depthAfter === undefined ? "" : `resin level after the wood has soaked it up: ${say(depthAfter)}`],
    ["foam", foam ? `foam room, keep it empty: ${say(foam)}` : ""],
    ["lid", height === undefined ? "" : `lid, ${say(height)} above the floor`],
  ];
  const shown = legend.filter(([, words]) => words);
  return {
    title:
      section.shape === "round"
        ? "Inside the chamber, from the side"
        : "Inside the tray, from the side; it stands in a round vacuum chamber",
    width: paper,
    height: floor + wall + 2,
    picture: svg`
      <rect class="fluid" x=${x(-width / 2)} y=${y(depth)} width=${long(width)} height=${long(depth)} />
      ${foam && height ? box("foam", { x: -width / 2, y: height - foam, width, height: foam }) : ""}
      ${pieces.map((piece) => box("wood", piece))}
      ${ballast ? box("steel", { x: aside - (width * plate) / 2, y: stack, width: width * plate, height: Math.max(ballast, 2 / scale) }) : ""}
      ${line("level", depth)}
      ${depthAfter === undefined ? "" : line("after", depthAfter)}
      ${wallsOf(left, floor - top * scale, width * scale, floor)}
      ${height === undefined ? "" : svg`<rect class="lid" x=${px(left - wall - 4)} y=${px(floor - top * scale - 9)} width=${px(wide + 8)} height="8" rx="2" />`}
    `,
    says: [...bath.lines, ...shown.map(([, words]) => words)].join("; "),
    legend: shown,
  };
}

/** The top layer seen from above, and where the drawing of the section is cut. */
export function aboveDrawing(bath: Bath): Drawing | undefined {
  const { section, places, layers = 1 } = bath;
  if (!places) return undefined;
  const { off, top } = cutOf(bath);
  const [width, breadth] = spanOf(section);
  const scale = Math.min((paper - 2 * wall - 30) / width, 240 / breadth);
  const cx = paper / 2;
  const cy = (breadth * scale) / 2 + wall + 2;
  const reach = (width * scale) / 2;
  const free = places.length - top.size;
  const empty = layers > 1 ? "lower" : "free";
  const saw = px(cy - off * scale);
  const legend: [string, string][] = [
    ["saw", `the side view above is cut here, ${Math.abs(off) > 1e-6 ? "beside" : "through"} the middle`],
  ];
  if (free) legend.unshift([empty, `free ${layers > 1 ? "in the top layer, full below" : "places"}: ${free} of ${places.length}`]);
  return {
    title: free ? "The top layer, from above" : "A full layer, from above",
    width: paper,
    height: 2 * cy,
    picture: svg`${floorOf(section, scale, cx, cy)}${places.map(
      (place) =>
        svg`<rect class=${top.has(place) ? "wood" : empty} x=${px(cx + place.x * scale)} y=${px(cy - (place.y + place.dy) * scale)} width=${px(place.dx * scale)} height=${px(place.dy * scale)} />`,
    )}<line class="saw" x1=${px(cx - reach - 12)} x2=${px(cx + reach + 12)} y1=${saw} y2=${saw} />`,
    says: [`${top.size} pieces in the layer`, ...legend.map(([, words]) => words)].join("; "),
    legend,
  };
}

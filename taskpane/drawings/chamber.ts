import { svg } from "lit";
import { said, sayIn } from "../../shared/outcome";
import type { Units } from "../../shared/unit";
import type { Place } from "../../src/chamber/blocks";
import { type Bath, spanOf } from "./bath";
import { type Drawing, paper, px } from "./drawing";

const wall = 5;
const tallest = 300;

/** A rectangle in the chamber, in metres: x from the middle, y up from the floor. */
export interface Box {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

/** The pieces that a cut through the middle meets, layer upon layer; one that it only passes is left out. */
function cutPieces({ places = [], layers = 0, last = 0, stack = 0 }: Bath): Box[] {
  const height = stack / layers;
  const middle = nearestRow(places);
  const lastPieces = nearest(places, middle, last);
  return Array.from({ length: layers }, (_, layer) => {
    const present = layer === layers - 1 ? lastPieces : undefined;
    return middle.filter((place) => !present || present.has(place)).map(({ x, dx }) => ({ x, y: layer * height, width: dx, height }));
  }).flat();
}

/** A last layer that is not full lies around the middle, where the cut goes. */
function nearest(places: readonly Place[], cut: readonly Place[], many: number): ReadonlySet<Place> {
  const off = (place: Place) => (cut.includes(place) ? 0 : 1e3) + Math.hypot(place.x + place.dx / 2, place.y + place.dy / 2);
  return new Set([...places].sort((a, b) => off(a) - off(b)).slice(0, many));
}

/** The pieces cut by the line across the chamber, parallel to x and nearest to the middle, that meets most of them. */
function nearestRow(places: readonly Place[]): Place[] {
  const heights = [...places].map(({ y, dy }) => y + dy / 2).sort((a, b) => Math.abs(a) - Math.abs(b));
  const at = (line: number) => places.filter(({ y, dy }) => y < line && line < y + dy);
  return heights.slice(0, 12).reduce<Place[]>((best, line) => (at(line).length > best.length ? at(line) : best), []);
}

/** Pieces and ballast as one block, where only their volume and the height of the stack are known. */
function blockOf({ section, stack, solids }: Bath): Box[] {
  if (!stack || !solids) return [];
  const [width, breadth] = spanOf(section);
  const share = Math.min(1, solids / (stack * width * breadth * (section.shape === "round" ? Math.PI / 4 : 1)));
  return [{ x: (-width * share) / 2, y: 0, width: width * share, height: stack }];
}

/** The chamber cut open: pieces, ballast, fluid line, foam room and lid. */
export function chamberDrawing(bath: Bath, units: Units): Drawing {
  const { section, height, foam, depth, depthAfter, stack = 0, ballast = 0 } = bath;
  const [width] = spanOf(section);
  const top = height ?? Math.max(depth, stack + ballast) * 1.25;
  const scale = Math.min((paper - 2 * wall - 30) / width, (tallest - 2 * wall) / top);
  const left = (paper - width * scale) / 2;
  const floor = top * scale + 18;
  const x = (m: number) => px(left + (m + width / 2) * scale);
  const y = (m: number) => px(floor - m * scale);
  const long = (m: number) => px(Math.max(0, m * scale));
  const box = (mark: string, { x: bx, y: by, width: w, height: h }: Box) =>
    svg`<rect class=${mark} x=${x(bx)} y=${y(by + h)} width=${long(w)} height=${long(h)} />`;

  const pieces = bath.places ? cutPieces(bath) : blockOf(bath);
  const say = (m: number) => sayIn(units, said("length", m));
  const line = (mark: string, m: number) => svg`<line class=${mark} x1=${x(-width / 2)} x2=${x(width / 2)} y1=${y(m)} y2=${y(m)} />`;
  const wide = 2 * wall + width * scale;
  const legend: [string, string][] = [
    ["wood", bath.places ? "pieces" : pieces.length ? "pieces and ballast, drawn as one block" : ""],
    ["steel", ballast ? "ballast" : ""],
    ["fluid", `fluid, ${say(depth)} deep${depthAfter === undefined ? "" : " at the start"}`],
    ["after", depthAfter === undefined ? "" : `the fluid when the wood has taken its fill: ${say(depthAfter)}`],
    ["foam", foam ? `foam room, to be left empty: ${say(foam)}` : ""],
    ["lid", height === undefined ? "" : `lid, ${say(height)} above the floor`],
  ];
  const shown = legend.filter(([, words]) => words);
  return {
    title: section.shape === "round" ? "The chamber, cut open" : "The tray, cut open; it stands inside a round vacuum chamber",
    width: paper,
    height: floor + wall + 2,
    picture: svg`
      <rect class="fluid" x=${x(-width / 2)} y=${y(depth)} width=${long(width)} height=${long(depth)} />
      ${foam && height ? box("foam", { x: -width / 2, y: height - foam, width, height: foam }) : ""}
      ${pieces.map((piece) => box("wood", piece))}
      ${ballast ? box("steel", { x: -width * 0.42, y: stack, width: width * 0.84, height: Math.max(ballast, 2 / scale) }) : ""}
      ${line("level", depth)}
      ${depthAfter === undefined ? "" : line("after", depthAfter)}
      <path class="wall" d=${`M${px(left - wall / 2)} ${y(top)}V${px(floor + wall / 2)}H${px(left + width * scale + wall / 2)}V${y(top)}`} />
      ${height === undefined ? "" : svg`<rect class="lid" x=${px(left - wall - 4)} y=${px(floor - top * scale - 9)} width=${px(wide + 8)} height="8" rx="2" />`}
    `,
    says: [...bath.lines, ...shown.map(([, words]) => words)].join("; "),
    legend: shown,
  };
}

/** One layer seen from above. */
export function aboveDrawing(bath: Bath): Drawing | undefined {
  const { section, places } = bath;
  if (!places) return undefined;
  const [width, breadth] = spanOf(section);
  const scale = Math.min((paper - 2 * wall - 30) / width, 240 / breadth);
  const cx = paper / 2;
  const cy = (breadth * scale) / 2 + wall + 2;
  const radius = px((width * scale) / 2);
  const floor =
    section.shape === "round"
      ? svg`<circle class="fluid walled" cx=${px(cx)} cy=${px(cy)} r=${radius} />`
      : svg`<rect class="fluid walled" x=${px(cx - (width * scale) / 2)} y=${px(cy - (breadth * scale) / 2)} width=${px(width * scale)} height=${px(breadth * scale)} />`;
  return {
    title: "A full layer, from above",
    width: paper,
    height: 2 * cy,
    picture: svg`${floor}${places.map(
      ({ x, y, dx, dy }) =>
        svg`<rect class="wood" x=${px(cx + x * scale)} y=${px(cy - (y + dy) * scale)} width=${px(dx * scale)} height=${px(dy * scale)} />`,
    )}`,
    says: `${places.length} pieces in the layer`,
    legend: [],
  };
}

import { type SVGTemplateResult, svg } from "lit";
import type { Units } from "../../shared/unit";
import { type Place, placesOf } from "../../src/plan/places";
import type { Plan, Planned } from "../../src/plan/planned";
import { plateOf } from "./bath";
import { type Drawing, measured, paper, px } from "./drawing";
import { contents, type Kind, type Line, letterOn } from "./lettering";
import { floorOf, spanOf, wall, wallsOf } from "./vessel";

export interface Shop {
  readonly gap: number;
  readonly foamRoom: number;
}

/** A load of a plan as it is packed. */
export interface Packing {
  readonly plan: Plan;
  readonly load: Planned;
  /** As the plan numbers it. */
  readonly number: number;
  readonly kinds: ReadonlyMap<number, Kind>;
  readonly shop: Shop;
  readonly units: Units;
}

/** Smallest readable letter. */
const smallest = 6;

/** A piece with its letter, where that fits and is not behind another one. */
function pieceAt({ mark, letter }: Kind, x: number, y: number, wide: number, tall: number, seen = true): SVGTemplateResult {
  const size = Math.min(10, tall * 0.85, (wide * 1.3) / letter.length);
  const words =
    size < smallest || !seen
      ? ""
      : svg`<text class=${`middle letter-${Math.floor(size)} ${letterOn(mark)}`} x=${px(x + wide / 2)} y=${px(y + tall / 2)} dy="0.35em">${letter}</text>`;
  return svg`<rect class=${`kind ${mark}`} x=${px(x)} y=${px(y)} width=${px(wide)} height=${px(tall)} />${words}`;
}

const named = (lines: readonly Line[]) => lines.map(({ mark, words, letter }) => [mark, words, letter] as const);

const spoken = (lines: readonly Line[]) => lines.map(({ words, letter }) => (letter ? `${letter} ${words}` : words)).join("; ");

/** Layers that look the same are drawn once. */
function layersOf(places: readonly Place[]): { first: number; last: number; places: readonly Place[] }[] {
  const layers: Place[][] = [];
  for (const place of places) {
    layers[place.layer] ??= [];
    layers[place.layer].push(place);
  }
  const looks = (layer: readonly Place[]) => layer.map(({ x, y, dx, dy, part }) => [x, y, dx, dy, part.row.index].join()).join(";");
  const groups: { first: number; last: number; places: readonly Place[]; look: string }[] = [];
  for (const [at, layer] of layers.entries()) {
    const look = looks(layer);
    const before = groups[groups.length - 1];
    if (before?.look === look) before.last = at;
    else groups.push({ first: at, last: at, places: layer, look });
  }
  return groups;
}

function layerName(first: number, last: number, many: number): string {
  if (many === 1) return "";
  const name = first === last ? `Layer ${first + 1}` : `Layers ${first + 1} to ${last + 1}`;
  return first === 0 ? `${name}, lowest` : last === many - 1 ? `${name}, top` : name;
}

/** Each layer from above, the lowest first: as it is packed. */
export function loadFromAbove({ load, number, kinds, plan: { tub }, shop: { gap } }: Packing): Drawing {
  const { places } = placesOf(load, gap);
  const layers = layersOf(places);
  const many = load.stack.strata.length;
  const [width, breadth] = spanOf(tub.section);
  const scaleFor = (columns: number) => Math.min((paper / columns - 2 * wall - 6) / width, 250 / breadth);
  const thin = places.reduce((least, { dx, dy }) => Math.min(least, dx, dy), Number.POSITIVE_INFINITY);
  // Side by side where letters can still be read.
  const columns = layers.length > 1 && thin * scaleFor(2) >= smallest / 0.85 ? 2 : 1;
  const scale = scaleFor(columns);
  const head = many > 1 ? 14 : 0;
  const cell = { wide: paper / columns, tall: breadth * scale + 2 * wall + head + 4 };
  const picture = layers.map(({ first, last, places: own }, i) => {
    const left = (i % columns) * cell.wide;
    const top = Math.floor(i / columns) * cell.tall;
    const cx = left + cell.wide / 2;
    const cy = top + head + wall + (breadth * scale) / 2;
    return svg`${head ? svg`<text class="middle" x=${px(cx)} y=${px(top + 10)}>${layerName(first, last, many)}</text>` : ""}
      ${floorOf(tub.section, scale, cx, cy)}
      ${own.map(({ part, x, y, dx, dy }) => pieceAt(kinds.get(part.row.index)!, cx + x * scale, cy - (y + dy) * scale, dx * scale, dy * scale))}`;
  });
  const lines = contents(load, kinds);
  const ways = [...new Set(load.stack.strata.map(({ way }) => way))].join(" and ");
  return {
    title: `Load ${number} from above`,
    width: paper,
    height: Math.ceil(layers.length / columns) * cell.tall,
    picture: svg`${picture}`,
    says: `${load.count} pieces ${ways} in ${many === 1 ? "one layer" : `${many} layers`}; ${spoken(lines)}`,
    legend: named(lines),
  };
}

/** The load seen from the side, from the lower edge of the view from above: the nearest pieces stand in front. */
export function loadFromSide({ load, number, kinds, plan: { tub }, shop: { gap, foamRoom }, units }: Packing): Drawing {
  const { places, plates } = placesOf(load, gap);
  const [width] = spanOf(tub.section);
  const { height, area } = tub;
  const scale = Math.min((paper - 2 * wall - 30) / width, 250 / height);
  const wide = width * scale;
  const left = (paper - wide) / 2;
  const floor = height * scale + 6;
  const x = (m: number) => left + (m + width / 2) * scale;
  const y = (m: number) => floor - m * scale;
  const say = (m: number) => measured(units, "length", m, units.system === "US" ? 1 : 0);
  const first = (load.pour + load.solids) / area;
  const last = (load.pour + load.add + load.solids - load.uptake) / area;
  const foam = foamRoom * height;
  const ballast = plateOf(load.ballast, area);
  const across = (mark: string, m: number) =>
    svg`<line class=${mark} x1=${px(x(-width / 2))} x2=${px(x(width / 2))} y1=${px(y(m))} y2=${px(y(m))} />`;
  const slab = (z: number, tall: number, share: number) =>
    svg`<rect class="steel" x=${px(x((-width * share) / 2))} y=${px(y(z + tall))} width=${px(wide * share)} height=${px(Math.max(2, tall * scale))} />`;
  const inFront = [...places].sort((a, b) => b.y - a.y);
  const isSeen = ({ x: at, z, dx, dz }: Place, i: number) =>
    !inFront.some(
      (other, j) =>
        j > i &&
        other.z < z + 0.7 * dz &&
        z + 0.3 * dz < other.z + other.dz &&
        other.x < at + 0.7 * dx &&
        at + 0.3 * dx < other.x + other.dx,
    );
  const lines: Line[] = [
    { mark: "fluid", words: `resin, ${say(first)} deep at the start` },
    { mark: "after", words: `level at the end, with the resin that is added: ${say(last)}` },
    ...(ballast > 0 ? [{ mark: "steel", words: `ballast, ${measured(units, "weight", load.ballast, 0)} of steel` }] : []),
    ...(plates.length ? [{ mark: "steel", words: "between layers: a plate, because the pieces below differ in height" }] : []),
    { mark: "foam", words: `foam room, leave it empty: ${say(foam)}` },
  ];
  return {
    title: `Load ${number} from the side`,
    width: paper,
    height: floor + wall + 2,
    picture: svg`
      <rect class="fluid" x=${px(left)} y=${px(y(first))} width=${px(wide)} height=${px(first * scale)} />
      <rect class="foam" x=${px(left)} y=${px(y(height))} width=${px(wide)} height=${px(foam * scale)} />
      ${inFront.map((place, i) => {
        const { part, x: at, z, dx, dz } = place;
        return pieceAt(kinds.get(part.row.index)!, x(at), y(z + dz), dx * scale, dz * scale, isSeen(place, i));
      })}
      ${plates.map(({ z, height: tall }) => slab(z, tall, 0.98))}
      ${ballast > 0 ? slab(load.stack.height, ballast, 0.84) : ""}
      ${across("level", first)}${across("after", last)}
      ${wallsOf(left, y(height), wide, floor)}`,
    says: `the tub is ${say(height)} high inside, the pieces stand ${say(load.stack.height)} high; ${spoken(lines)}`,
    legend: named(lines),
  };
}

import type { Layer } from "../chamber/blocks";
import { waysOf } from "../chamber/layers";
import type { Run } from "../chamber/rows";
import type { Section } from "../chamber/section";
import type { Stack } from "../chamber/stack";
import type { Shape } from "../chamber/stratum";

const one = 1 + 1e-9;

/** How many stacks are remembered. */
const mostKnown = 2000;

/** The first places of a full layer. */
function firstRuns(layer: Layer, many: number, size: number): Run[] {
  const runs: Run[] = [];
  let missing = many;
  for (const block of layer.blocks) {
    if (missing <= 0) break;
    const whole = Math.min(block.rows, Math.floor(missing / block.columns));
    if (whole > 0) runs.push({ ...block, rows: whole, size });
    missing -= whole * block.columns;
    if (whole < block.rows && missing > 0) {
      runs.push({ ...block, y: block.y + whole * (block.dy + layer.gap), rows: 1, columns: missing, size });
      missing = 0;
    }
  }
  return runs;
}

/** Pieces of one size by themselves in a tub, packed as ARRANGE packs them; `height` is what pieces may take of the tub. */
export function oneSize(shapes: readonly Shape[], section: Section, gap: number, height: number) {
  const ways = new Map<number, ReturnType<typeof waysOf>>();
  const waysFor = (size: number) => {
    const known = ways.get(size);
    if (known) return known;
    const { a, b, length } = shapes[size];
    const all = waysOf(section, gap, { thickness: a, width: b, length });
    const made = all.filter((way) => way.layer.pieces > 0 && way.height <= height * one);
    ways.set(size, made);
    return made;
  };
  const layersIn = (layer: number) => Math.floor((height / layer) * one);

  /** What one tub holds of a size: as PERLOAD says. */
  const perLoad = (size: number): number => Math.max(0, ...waysFor(size).map((way) => layersIn(way.height) * way.layer.pieces));

  const stacks = new Map<string, Stack>();
  /** A number of pieces of one size, no more than go in, in the way that stacks lowest. */
  const stackOf = (size: number, many: number): Stack => {
    const key = `${size},${many}`;
    const known = stacks.get(key);
    if (known) return known;
    const open = waysFor(size).filter((way) => layersIn(way.height) * way.layer.pieces >= many);
    const highOf = (way: (typeof open)[number]) => Math.ceil(many / way.layer.pieces) * way.height;
    const way = open.reduce((a, b) => (highOf(b) < highOf(a) - 1e-9 * height ? b : a));
    const strata = Array.from({ length: Math.ceil(many / way.layer.pieces) }, (_, i) => {
      const here = Math.min(way.layer.pieces, many - i * way.layer.pieces);
      return { way: way.way, height: way.height, uneven: false, runs: firstRuns(way.layer, here, size) };
    });
    const made = { strata, height: highOf(way), count: many, worth: many * shapes[size].volume };
    if (stacks.size > mostKnown) stacks.clear();
    stacks.set(key, made);
    return made;
  };

  return { perLoad, stackOf };
}

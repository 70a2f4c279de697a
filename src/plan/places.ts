import type { Way } from "../chamber/stratum";
import type { Load } from "./loads";
import type { Part } from "./parts";

/** One piece in its tub: the corner nearest to minus infinity, x and y from the middle, z from the floor, and its sides; in meters. */
export interface Place {
  readonly part: Part;
  readonly x: number;
  readonly y: number;
  readonly z: number;
  readonly dx: number;
  readonly dy: number;
  readonly dz: number;
  readonly way: Way;
  /** Number of its layer, from the floor up, 0 the lowest. */
  readonly layer: number;
}

/** A plate that evens out what lies below it. */
export interface Plate {
  readonly z: number;
  readonly height: number;
}

/** Where every piece of a load lies, as it was packed: for drawings to scale. */
export function placesOf({ stack, shares }: Load, gap: number): { places: Place[]; plates: Plate[] } {
  const places: Place[] = [];
  const plates: Plate[] = [];
  const queues = new Map<number, { part: Part; left: number }[]>();
  for (const { part, count } of shares) {
    const queue = queues.get(part.size);
    if (queue) queue.push({ part, left: count });
    else queues.set(part.size, [{ part, left: count }]);
  }
  const next = (size: number): Part => {
    const queue = queues.get(size)!;
    while (queue[0].left === 0) queue.shift();
    queue[0].left--;
    return queue[0].part;
  };
  let z = 0;
  stack.strata.forEach(({ runs, way, height, uneven }, layer) => {
    for (const { size, x, y, dx, dy, columns, rows } of runs)
      for (let i = 0; i < columns * rows; i++) {
        const part = next(size);
        const { thickness, width, length } = part.row;
        const dz = (thickness * width * length) / (dx * dy);
        places.push({ part, x: x + (i % columns) * (dx + gap), y: y + Math.floor(i / columns) * (dy + gap), z, dx, dy, dz, way, layer });
      }
    z += height;
    if (uneven && layer < stack.strata.length - 1) {
      plates.push({ z, height: gap });
      z += gap;
    }
  });
  return { places, plates };
}

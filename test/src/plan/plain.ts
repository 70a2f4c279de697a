import type { Given } from "../../../src/plan/given";
import type { Load } from "../../../src/plan/loads";
import type { Plan } from "../../../src/plan/planned";

/** A plain way to pack that a plan must never lose to, of another make: pieces as they come, upright, in rows from wall to wall. */
interface Standing {
  readonly across: number;
  readonly deep: number;
  readonly high: number;
}

/** One layer of upright pieces, first fit: what it could not take, and how high it is. */
function layer(pieces: readonly Standing[], { section }: Plan["tub"], gap: number) {
  const bit = 1e-12;
  const radius = section.shape === "round" ? section.diameter / 2 - gap : 0;
  const [wide, top] = section.shape === "round" ? [0, radius] : [section.length - 2 * gap, section.width / 2 - gap];
  const chord = (far: number) => (section.shape === "round" ? 2 * Math.sqrt(Math.max(0, radius ** 2 - far ** 2)) : wide);
  let rest = [...pieces];
  let high = 0;
  let y = -top;
  while (rest.length && y + rest[0].deep <= top + bit) {
    const { deep } = rest[0];
    const long = chord(Math.max(Math.abs(y), Math.abs(y + deep)));
    let x = 0;
    const over: Standing[] = [];
    for (const piece of rest) {
      if (piece.deep > deep + bit || x + piece.across > long + bit) {
        over.push(piece);
        continue;
      }
      x += piece.across + gap;
      high = Math.max(high, piece.high);
    }
    // Near the wall of a round tub a row is too short: a little farther in it may not be.
    y += over.length < rest.length ? deep + gap : top / 40;
    rest = over;
  }
  return { rest, high };
}

/** Loads that first fit needs for the pieces of a plan; Infinity where some do not go in upright. */
export function plainLoads({ loads, tub }: Plan, given: Given): number {
  const room = tub.height * (1 - given.foamRoom) - given.cover;
  const colors = new Map<number, Load[]>();
  for (const load of loads) colors.set(load.color, [...(colors.get(load.color) ?? []), load]);
  let many = 0;
  for (const own of colors.values()) {
    const shares = own.flatMap((load) => load.shares).sort((a, b) => a.part.row.index - b.part.row.index);
    let rest = shares.flatMap(({ part: { row }, count }) =>
      Array.from({ length: count }, (): Standing => ({ across: row.thickness, deep: row.width, high: row.length })),
    );
    while (rest.length) {
      const before = rest.length;
      for (let height = 0; ; ) {
        const open = rest.filter(({ high }) => height + high <= room + 1e-12);
        const made = layer(open, tub, given.gap);
        if (made.rest.length === open.length) break;
        const left = new Set(made.rest);
        rest = rest.filter((piece) => left.has(piece) || !open.includes(piece));
        height += made.high + given.gap;
      }
      if (rest.length === before) return Number.POSITIVE_INFINITY;
      many++;
    }
  }
  return many;
}

import { allowance, refuseTiny } from "./abreast";
import { type Block, type Layer, layerOf } from "./blocks";

/*
 * A piece that keeps `gap` to its neighbors and to the wall is a piece larger by `gap` in a tray smaller by
 * `gap`, packed without any: here all sides are those. The layer is a block of columns to the left and, right
 * of it, strips one over the other, `lying` ones of pieces as they are, then `turned` ones turned a quarter:
 *
 *     [ ][ ] [   ][   ][   ]
 *     [ ][ ] [   ][   ][   ]
 *     [ ][ ] [ ][ ][ ][ ][ ]
 */

const into = (stretch: number, side: number): number => Math.max(0, Math.floor((stretch / side) * (1 + allowance)));

interface Mix {
  readonly pieces: number;
  readonly columns: number;
  readonly turned: number;
}

/** The best mix with its block and its lying strips of pieces a along x and b along y. Every one is looked at. */
function mix(length: number, width: number, a: number, b: number, atLeast: number): Mix {
  let best: Mix = { pieces: atLeast, columns: 0, turned: 0 };
  const inColumn = into(width, b);
  // The room that so many turned strips leave for lying ones is the same beside every block.
  const lying = Array.from({ length: into(width, a) + 1 }, (_, turned) => into(width - turned * a, b));
  for (let columns = into(length, a); columns >= 0; columns--) {
    const rest = length - columns * a;
    const asIs = into(rest, a);
    const quarter = into(rest, b);
    for (let turned = 0; turned < lying.length; turned++) {
      const pieces = columns * inColumn + lying[turned] * asIs + turned * quarter;
      if (pieces > best.pieces) best = { pieces, columns, turned };
    }
  }
  return best;
}

/** The blocks of a mix, in the tray's own measures from its lower left corner. */
function blocksOf(length: number, width: number, a: number, b: number, { columns, turned }: Mix): Block[] {
  const x = columns * a;
  const lying = into(width - turned * a, b);
  return [
    { x: 0, y: 0, dx: a, dy: b, columns, rows: into(width, b) },
    { x, y: 0, dx: b, dy: a, columns: into(length - x, b), rows: turned },
    { x, y: turned * a, dx: a, dy: b, columns: into(length - x, a), rows: lying },
  ].filter((block) => block.columns * block.rows > 0);
}

const transposed = ({ x, y, dx, dy, columns, rows }: Block): Block => ({ x: y, y: x, dx: dy, dy: dx, columns: rows, rows: columns });

/** The fullest layer of pieces a by b in a tray: both turns of the piece, and the strips along either side. */
export function inRectangle(length: number, width: number, gap: number, a: number, b: number): Layer {
  const [long, wide, first, second] = [length - gap, width - gap, a + gap, b + gap];
  if (long <= gap || wide <= gap) return layerOf(gap, []);
  refuseTiny(Math.max(long, wide) - gap, Math.min(a, b), gap);
  const most = into(long * wide, first * second);
  let blocks: Block[] = [];
  let pieces = 0;
  for (const along of [true, false]) {
    for (const [p, q] of first === second
      ? [[first, second]]
      : [
          [first, second],
          [second, first],
        ]) {
      if (pieces === most) break;
      const [l, w] = along ? [long, wide] : [wide, long];
      const found = mix(l, w, p, q, pieces);
      if (found.pieces <= pieces) continue;
      pieces = found.pieces;
      const made = blocksOf(l, w, p, q, found);
      blocks = along ? made : made.map(transposed);
    }
  }
  return layerOf(
    gap,
    blocks.map((block) => ({
      ...block,
      x: block.x + gap - length / 2,
      y: block.y + gap - width / 2,
      dx: block.dx - gap,
      dy: block.dy - gap,
    })),
  );
}

import { abreast, allowance, refuseTiny, stretchOf } from "./abreast";
import { type Block, type Layer, layerOf } from "./blocks";

/*
 * Rows of unequal length across the circle, none longer than `zone` pieces, and in the segments left to the
 * right and left of the zone columns of pieces turned a quarter:
 *
 *        . - [  ][  ] - .          All rows move up and down together. From any position they can rise, and none
 *      /[ ][  ][  ][  ][ ]\        loses a piece, until the outer edge of some row touches the circle. So only those
 *     | [ ][  ][  ][  ][ ] |       positions need a look, and the best of them is the best there is.
 *      \[ ][  ][  ][  ][ ]/
 *        ' - [  ][  ] - '
 */

interface Row {
  readonly y: number;
  readonly many: number;
}

/** Pieces `along` the rows and `across` them, `gap` apart and `gap` off the wall. */
function rowsAndSides(radius: number, gap: number, along: number, across: number): Layer {
  const free = (radius - gap) * (1 + allowance);
  const pitch = across + gap;
  const halfChord = (at: number) => Math.sqrt(Math.max(0, free * free - at * at));
  /** Pieces in a band whose edge farther from the middle is at `edge`. */
  const within = (edge: number) => (edge < free ? abreast(2 * halfChord(edge), along, gap) : 0);
  const most = free > 0 ? within(across / 2) : 0;
  if (most === 0) return layerOf(gap, []);

  const rowsAt = (start: number): Row[] => {
    const rows: Row[] = [];
    for (let y = start - Math.floor((free + start) / pitch) * pitch; y + across < free; y += pitch) {
      const many = within(Math.max(-y, y + across));
      if (many > 0) rows.push({ y, many });
    }
    return rows;
  };

  const columnsBeside = (zone: number): Row[] => {
    const columns: Row[] = [];
    for (let x = stretchOf(zone, along, gap) / 2 + gap; x + across < free; x += pitch) {
      const many = within(x + across);
      if (many > 0) columns.push({ y: x, many });
    }
    return columns;
  };
  const beside = Array.from({ length: most + 1 }, (_, zone) => 2 * columnsBeside(zone).reduce((sum, { many }) => sum + many, 0));

  // A row or a joint on the center line comes first, so that among equals the symmetric layer wins.
  const starts = [-across / 2, gap / 2];
  for (let many = 1; many <= most; many++) starts.push(halfChord(stretchOf(many, along, gap) / 2) - across);

  let best = { pieces: 0, start: 0, zone: 0 };
  for (const start of starts) {
    const longer = new Array<number>(most + 1).fill(0);
    let pieces = 0;
    for (const { many } of rowsAt(start)) {
      longer[Math.min(many, most)]++;
      pieces += Math.min(many, most);
    }
    // From the widest zone inwards: each step takes one piece from every row longer than the zone.
    for (let zone = most, rows = 0; zone > 0; zone--) {
      if (pieces + beside[zone] > best.pieces) best = { pieces: pieces + beside[zone], start, zone };
      rows += longer[zone];
      pieces -= rows;
    }
  }

  const { start, zone } = best;
  const rows = rowsAt(start).map(({ y, many }): Block => {
    const columns = Math.min(many, zone);
    return { x: -stretchOf(columns, along, gap) / 2, y, dx: along, dy: across, columns, rows: 1 };
  });
  const sides = columnsBeside(zone).flatMap(({ y: x, many }): Block[] => {
    const column = { y: -stretchOf(many, along, gap) / 2, dx: across, dy: along, columns: 1, rows: many };
    return [
      { ...column, x },
      { ...column, x: -x - across },
    ];
  });
  return layerOf(gap, [...rows, ...sides]);
}

/** The fullest layer of pieces a by b in a round chamber. */
export function inCircle(diameter: number, gap: number, a: number, b: number): Layer {
  const free = Math.max(0, diameter - 2 * gap);
  refuseTiny(free, Math.min(a, b), gap);
  const one = rowsAndSides(diameter / 2, gap, a, b);
  if (a === b) return one;
  const other = rowsAndSides(diameter / 2, gap, b, a);
  return other.pieces > one.pieces ? other : one;
}

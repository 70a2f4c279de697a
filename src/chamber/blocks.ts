/** A block of equal pieces in rows and columns, seen from above, in meters from the middle of the chamber. */
export interface Block {
  /** The lower left corner of its first piece. */
  readonly x: number;
  readonly y: number;
  /** One piece. */
  readonly dx: number;
  readonly dy: number;
  readonly columns: number;
  readonly rows: number;
}

/** One layer, as full as it gets. */
export interface Layer {
  readonly pieces: number;
  readonly gap: number;
  readonly blocks: readonly Block[];
}

/** One piece seen from above: its lower left corner from the middle of the chamber, and its sides, in meters. */
export interface Place {
  readonly x: number;
  readonly y: number;
  readonly dx: number;
  readonly dy: number;
}

export const layerOf = (gap: number, blocks: readonly Block[]): Layer => ({
  pieces: blocks.reduce((sum, block) => sum + block.columns * block.rows, 0),
  gap,
  blocks,
});

/** Where each piece of a layer lies, for a drawing to scale. */
export const placesOf = ({ gap, blocks }: Layer): Place[] =>
  blocks.flatMap(({ x, y, dx, dy, columns, rows }) =>
    Array.from({ length: columns * rows }, (_, i) => ({
      x: x + (i % columns) * (dx + gap),
      y: y + Math.floor(i / columns) * (dy + gap),
      dx,
      dy,
    })),
  );

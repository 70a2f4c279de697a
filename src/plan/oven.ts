/** Pieces that bake alike. */
export interface Baked {
  /** Seconds in the oven. */
  readonly bake: number;
  /** How many of them lie on one shelf. */
  readonly perShelf: number;
  readonly count: number;
}

/** Seconds that each batch bakes: pieces by their bakes, the shortest first, each batch what the shelves hold. */
export function batchesOf(pieces: readonly Baked[], shelves: number): number[] {
  const batches: number[] = [];
  let room = shelves;
  let slowest = 0;
  const end = () => {
    if (slowest > 0) batches.push(slowest);
    [room, slowest] = [shelves, 0];
  };
  for (const { bake, perShelf, count } of [...pieces].sort((a, b) => a.bake - b.bake)) {
    for (let left = count; left > 0; ) {
      const many = Math.min(left, Math.floor(room * perShelf + 1e-7));
      if (many < 1) {
        end();
        continue;
      }
      left -= many;
      room -= many / perShelf;
      slowest = bake;
    }
  }
  end();
  return batches;
}

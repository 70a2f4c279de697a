import type { Stack } from "../chamber/stack";
import type { Part } from "./parts";

/** The fullest load of just these pieces. */
type Fill = (left: Int32Array, count: number) => Stack;

/** In the order typed: each load takes as many of the next pieces as go in; what goes into no load is listed. */
export function packInTurn(parts: readonly Part[], sizes: number, mostPieces: number, fill: Fill) {
  const stacks: Stack[] = [];
  let [row, used, guess] = [0, 0, 8];
  /** The next so many pieces. */
  const next = (many: number): Int32Array => {
    const left = new Int32Array(sizes);
    for (let [i, skip, missing] = [row, used, many]; missing > 0 && i < parts.length; i++, skip = 0) {
      const here = Math.min(missing, parts[i].row.count - skip);
      left[parts[i].size] += here;
      missing -= here;
    }
    return left;
  };
  let rest = parts.reduce((sum, { row: { count } }) => sum + count, 0);
  while (rest > 0) {
    let [good, bad] = [0, Math.min(rest, mostPieces) + 1];
    let best: Stack | undefined;
    for (let tried = Math.min(guess, bad - 1); good + 1 < bad; ) {
      const stack = fill(next(tried), tried);
      if (stack.count === tried) [good, best] = [tried, stack];
      else bad = tried;
      tried = bad > rest ? Math.min(2 * good, bad - 1) : (good + bad) >> 1;
      tried = Math.max(good + 1, Math.min(tried, bad - 1));
    }
    if (!best) return { stacks, stuck: next(rest) };
    if (rest - good === 1 && good > 2) {
      const fewer = fill(next(good - 1), good - 1);
      if (fewer.count === good - 1) [good, best] = [fewer.count, fewer];
    }
    stacks.push(best);
    guess = good;
    rest -= good;
    for (let missing = good; missing > 0; ) {
      const here = Math.min(missing, parts[row].row.count - used);
      missing -= here;
      used += here;
      if (used === parts[row].row.count) [row, used] = [row + 1, 0];
    }
  }
  return { stacks, stuck: undefined };
}

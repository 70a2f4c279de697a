import { addressOf, type Block, blockOf, rangeOf } from "./address";

const said = (block: Block): string =>
  block.top === block.bottom && block.left === block.right ? addressOf({ row: block.top, column: block.left }) : rangeOf(block);

/** What of a block is left outside another. */
function cut(block: Block, out: Block): Block[] {
  const [top, bottom] = [Math.max(block.top, out.top), Math.min(block.bottom, out.bottom)];
  const [left, right] = [Math.max(block.left, out.left), Math.min(block.right, out.right)];
  if (top > bottom || left > right) return [block];
  return [
    { ...block, bottom: top - 1 },
    { ...block, top: bottom + 1 },
    { top, bottom, left: block.left, right: left - 1 },
    { top, bottom, left: right + 1, right: block.right },
  ].filter((one) => one.top <= one.bottom && one.left <= one.right);
}

/** Ranges, a space between them, without the cells of others; "" where nothing is left. */
export function without(ranges: string, out: readonly string[]): string {
  const blocks = ranges.split(/\s+/).filter(Boolean).map(blockOf);
  const left = out.map(blockOf).reduce((rest, one) => rest.flatMap((block) => cut(block, one)), blocks);
  return left.map(said).join(" ");
}

/** Rows of a sheet: a reference such as A:A hands in all of them. */
const all = 1_048_576;

const isBlank = (cell: unknown, asZero: boolean): boolean => cell === null || cell === "" || cell === undefined || (asZero && cell === 0);

type Block = readonly (readonly unknown[])[];

/** Where the filled part of a column ends. Some versions hand blank cells in as zeros: then the last row of the sheet is 0. */
function filledRows(block: Block): number {
  const asZero = block[block.length - 1]?.every((cell) => cell === 0) ?? false;
  let rows = block.length;
  while (rows > 1 && block[rows - 1].every((cell) => isBlank(cell, asZero))) rows--;
  return rows;
}

/** Whole columns as far as any of them is filled: else an answer would be a million rows long. */
export function trimmed(handed: readonly unknown[], rowsOfSheet = all): readonly unknown[] {
  const isWhole = (one: unknown): one is Block => Array.isArray(one) && one.length === rowsOfSheet;
  const whole = handed.filter(isWhole);
  if (!whole.length) return handed;
  const rows = Math.max(...whole.map(filledRows));
  return handed.map((block) => (isWhole(block) ? block.slice(0, rows) : block));
}

/** The letters that name a column, counted from zero: 0 is A, 26 is AA. */
export const letters = (column: number): string =>
  column < 26 ? String.fromCharCode(65 + column) : letters(Math.floor(column / 26) - 1) + letters(column % 26);

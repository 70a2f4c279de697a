/** How a list put on a sheet looks, in every host. */

/** Its columns in characters: the tick, what it is about, and why. */
export const widths: readonly number[] = [9, 60, 60];

/** The first row heads every page; a row that says something in its first cell alone heads those below it. */
export const isHeading = (row: readonly string[], index: number): boolean => index === 0 || row.slice(1).every((text) => text === "");

/** A heading below the first row runs over the blank cells beside it; everything else is wrapped within its column. */
export const isWrapped = (row: readonly string[], index: number): boolean => index === 0 || !isHeading(row, index);

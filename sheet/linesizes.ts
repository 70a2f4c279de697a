/** Widths and heights: files count columns in letters and rows in points of print, the engine both in points of a screen. */
export const perWidth = 0.143;
export const perHeight = 0.75;

/** Default sizes, where a file states none. */
export const usual = { width: 8.43, height: 12.75 };

export const rounded = (number: number): number => Math.round(number * 100) / 100;

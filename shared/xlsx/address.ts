import { letters } from "./letters";

/** A cell, counted from 0. */
export interface At {
  readonly row: number;
  readonly column: number;
}

/** A block of cells, counted from 0, both ends in. */
export interface Block {
  readonly top: number;
  readonly left: number;
  readonly bottom: number;
  readonly right: number;
}

export function columnOf(text: string): number {
  let number = 0;
  // A letter's last five bits are its place in the alphabet, large or small.
  for (let i = 0; i < text.length; i++) number = number * 26 + (text.charCodeAt(i) & 31);
  return number - 1;
}

/** "B3" or "$B$3". */
export function atOf(address: string): At {
  const [, column, row] = /^\$?([A-Z]+)\$?(\d+)$/i.exec(address) ?? ["", "A", "1"];
  return { row: Number(row) - 1, column: columnOf(column) };
}

export const addressOf = ({ row, column }: At): string => `${letters(column)}${row + 1}`;

/** "B3:D9" or "B3". */
export function blockOf(range: string): Block {
  const [first, last] = range.split(":").map(atOf);
  const end = last ?? first;
  return { top: first.row, left: first.column, bottom: end.row, right: end.column };
}

/** One cell as a block. */
export const blockAt = ({ row, column }: At): Block => ({ top: row, left: column, bottom: row, right: column });

export const isIn = ({ top, left, bottom, right }: Block, { row, column }: At): boolean =>
  row >= top && row <= bottom && column >= left && column <= right;

export const sizeOf = ({ top, left, bottom, right }: Block): number => (bottom - top + 1) * (right - left + 1);

export const cellsOf = ({ top, left, bottom, right }: Block): At[] =>
  Array.from({ length: bottom - top + 1 }, (_, row) =>
    Array.from({ length: right - left + 1 }, (_, column) => ({ row: top + row, column: left + column })),
  ).flat();

export const rangeOf = ({ top, left, bottom, right }: Block): string =>
  `${addressOf({ row: top, column: left })}:${addressOf({ row: bottom, column: right })}`;

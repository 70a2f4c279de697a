import { most } from "./move";

/** Open ranges such as A:A or A2:A: the engine's writer closes them at the present end of its sheet, which would lose later rows. */

const apart = `"(?:[^"]|"")*"|'(?:[^']|'')*'`;
const column = String.raw`\$?[A-Z]{1,3}`;
const row = String.raw`\$?[1-9]\d{0,6}`;
const open = new RegExp(`${apart}|(?<![\\w.$:])(${column})?(${row})?:(${column})?(${row})?(?![\\w.(!:])`, "gi");
const shut = new RegExp(
  `${apart}|(?<![\\w.$:])(?:(${column})\\$1:(${column})\\$${most.row}|\\$A(${row}):\\$XFD(${row}))(?![\\w.(!:])`,
  "gi",
);

/** With the last row or column that a sheet can have in the place of a missing end. */
export const withEnds = (formula: string): string =>
  formula.replace(open, (text, left?: string, top?: string, right?: string, bottom?: string) => {
    if (left && right && !top && !bottom) return `${left}$1:${right}$${most.row}`;
    if (top && bottom && !left && !right) return `$A${top}:$XFD${bottom}`;
    if (left && top && right && !bottom) return `${text}${most.row}`;
    if (left && top && bottom && !right) return `${left}${top}:XFD${bottom}`;
    return text;
  });

/** All of a column or a row, as it was typed. */
export const withoutEnds = (formula: string): string =>
  formula.replace(shut, (text, left?: string, right?: string, top?: string, bottom?: string) =>
    left ? `${left}:${right}` : top ? `${top}:${bottom}` : text,
  );

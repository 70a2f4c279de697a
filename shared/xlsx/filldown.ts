import { type At, columnOf } from "./address";
import { letters } from "./letters";
import { joined, tokensOf } from "./tokens";

const most = { rows: 1_048_576, columns: 16_384 };

const one = /^(\$?)([A-Z]{0,3})(\$?)(\d*)$/i;

/** A cell, a column or a row, moved unless a dollar sign holds it; undefined where it leaves the sheet. */
function moved(reference: string, by: At): string | undefined {
  const [, first, name, second, number] = one.exec(reference) ?? [];
  // "$5" is a row: its only dollar sign stands first.
  const [columnFix, rowFix] = name ? [first, second] : ["", first];
  const column = name ? columnOf(name) + (columnFix ? 0 : by.column) : 0;
  const row = number ? Number(number) - 1 + (rowFix ? 0 : by.row) : 0;
  if (column < 0 || row < 0 || column >= most.columns || row >= most.rows) return undefined;
  return `${columnFix}${name ? letters(column) : ""}${rowFix}${number ? row + 1 : ""}`;
}

/** A formula moved down or across: files keep a shared formula once. */
export function movedFormula(formula: string, by: At): string {
  return joined(
    tokensOf(formula).map((token) => {
      if (token.kind !== "cell" && token.kind !== "range") return token;
      const ends = token.text.split(":").map((end) => moved(end, by));
      return { ...token, text: ends.includes(undefined) ? "#REF!" : ends.join(":") };
    }),
  );
}

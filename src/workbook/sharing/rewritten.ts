import { addressOf, cellsOf, sizeOf } from "../../../shared/xlsx/address";
import type { FileCell } from "../../../shared/xlsx/cells";
import { joined, type Token } from "../../../shared/xlsx/tokens";
import type { NewFormula } from "../../../shared/xlsx/values";
import { asTyped, isOneCall } from "../../calls";
import { isRef } from "../formula";
import { refText } from "../place";
import type { OpenSheet } from "./opened";
import { type Called, callsIn } from "./parsed";
import type { Twins } from "./plaincalls";

/** Nothing until something is typed, as the functions have it. */
function unlessBlank({ contract, given }: Called, from: string, row: number | undefined, text: string): string {
  const needed = Object.entries(given ?? {}).flatMap(([key, value]) =>
    isRef(value) && key !== "shop" && contract.args[key] && !contract.args[key].optional ? [refText(value, from, row)] : [],
  );
  const blank = needed.map((cell) => `${cell}=""`).join(",");
  return needed.length ? `IF(AND(${blank}),"",${text})` : text;
}

/** The one cell that a formula takes of an answer of several, `INDEX(call,1,3)`: the twin of that cell stands for all of it. */
function askedFor(tokens: readonly Token[], { contract, from, to }: Called): { from: number; to: number; column: number | undefined } {
  if (contract.returns.form === "cell") return { from, to, column: 0 };
  const around = [...tokens.slice(from - 2, from), ...tokens.slice(to + 1, to + 6)].map(({ text }) => text.toUpperCase());
  const [index, open, comma1, row, comma2, column, close] = around;
  const isOne =
    index === "INDEX" && open === "(" && comma1 === "," && row === "1" && comma2 === "," && /^\d+$/.test(column) && close === ")";
  return isOne ? { from: from - 2, to: to + 5, column: Number(column) - 1 } : { from, to, column: undefined };
}

/** The plain formulas of one cell's formula, by the cells that it fills; undefined where it has none. */
export function rewritten(cell: FileCell, sheet: OpenSheet, twins: Twins): Map<string, NewFormula> | undefined {
  const { formula } = cell;
  if (!formula || formula.kind === "shared" || formula.kind === "other") return undefined;
  const text = asTyped(formula.text);
  const { tokens, calls } = callsIn(text, sheet.name, twins.nameOf);
  if (!calls.length) return undefined;
  const made = new Map<string, NewFormula>();
  const { block } = formula;
  if (block && sizeOf(block) > 1) {
    const [call] = calls;
    if (!isOneCall(`=${text}`) || call.contract.per !== "piece") return undefined;
    for (const at of cellsOf(block)) {
      const row = at.row - block.top;
      const twin = twins.of(call, sheet.name, row, at.column - block.left);
      if (twin === undefined) return undefined;
      made.set(addressOf(at), { formula: unlessBlank(call, sheet.name, row, twin) });
    }
    return made;
  }
  const parts = [...tokens];
  for (const call of calls) {
    const { from, to, column } = askedFor(tokens, call);
    const twin = column === undefined ? undefined : twins.of(call, sheet.name, undefined, column);
    if (twin === undefined) return undefined;
    for (let at = from; at <= to; at++) parts[at] = { kind: "mark", text: at === from ? `(${twin})` : "" };
  }
  const whole = joined(parts).replace(/@(?=\()/g, "");
  const isBare = isOneCall(`=${text}`);
  made.set(cell.address, { formula: isBare ? unlessBlank(calls[0], sheet.name, undefined, whole) : whole });
  return made;
}

import { addressOf } from "../../shared/xlsx/address";
import type { Allowed, Cell, Sheet } from "./book";
import { fixedText, ofKey, type Ref, rangeText, refTo } from "./place";

interface Group {
  readonly allowed: Allowed;
  readonly hint?: string;
  readonly column: number;
  readonly rows: number[];
}

/** Text with a unit ("19 mm") counts as a number, and a wood has several spellings: such a list only suggests and refuses nothing. */
function ruleOf(allowed: Allowed, first: string) {
  if ("list" in allowed) {
    const { list, only } = allowed;
    const source = Array.isArray(list) ? { values: [...list] as string[] } : { formula1: fixedText(list as Ref) };
    return {
      type: "list" as const,
      ...source,
      showErrorMessage: only === true,
      errorStyle: only ? ("stop" as const) : ("warning" as const),
      errorMessage: "That is not on the list.",
    };
  }
  if ("date" in allowed)
    return {
      type: "date" as const,
      operator: "greaterThanOrEqual" as const,
      formula1: "61",
      errorStyle: "warning" as const,
      errorMessage: "Type a date, or a date and a time.",
    };
  const { from, to, whole } = allowed;
  const range = `AND(${first}>=${from},${first}<=${to}${whole ? `,${first}=INT(${first})` : ""})`;
  return {
    type: "custom" as const,
    formula1: `IF(ISNUMBER(${first}),${range},${whole ? "FALSE" : `ISTEXT(${first})`})`,
    errorStyle: "warning" as const,
    errorMessage: `Numbers from ${from} to ${to} are allowed here.`,
  };
}

/** Cells below each other that may hold the same, as one. */
function groupsOf(sheet: Sheet): Group[] {
  const groups = new Map<string, Group>();
  for (const [at, { allowed, hint }] of sheet.cells as Map<string, Cell>) {
    if (!allowed) continue;
    const [row, column] = ofKey(at);
    const id = `${column} ${JSON.stringify(allowed)} ${hint ?? ""}`;
    const group = groups.get(id) ?? { allowed, hint, column, rows: [] };
    group.rows.push(row);
    groups.set(id, group);
  }
  return [...groups.values()];
}

/** Rows in runs without a gap. */
function runs(rows: readonly number[]): [from: number, length: number][] {
  const sorted = [...rows].sort((a, b) => a - b);
  const found: [number, number][] = [];
  for (const row of sorted) {
    const last = found.at(-1);
    if (last && last[0] + last[1] === row) last[1]++;
    else found.push([row, 1]);
  }
  return found;
}

/** The data validations of a sheet, with their prompts. */
export const validationsOf = (sheet: Sheet) =>
  groupsOf(sheet).flatMap(({ allowed, hint, column, rows }) =>
    runs(rows).map(([from, length]) => ({
      range: rangeText(refTo(sheet.name, from, column, length)),
      allowBlank: true,
      showErrorMessage: true,
      errorTitle: "Porewise",
      ...(hint ? { showInputMessage: true, inputMessage: hint } : {}),
      ...ruleOf(allowed, addressOf({ row: from, column })),
    })),
  );

import * as engine from "@odoo/o-spreadsheet";
import type { Outcome } from "../shared/outcome";
import { faultOf, tooLarge } from "./cell";
import { extend } from "./extend";
import { heard, type Made, register } from "./functions";
import { quietly } from "./quietly";
import { respelled } from "./quotes";

register(engine);
extend(engine);

/** A workbook without a screen. */
export const model = (data?: object): engine.Model => quietly(() => new engine.Model(data));

export interface Answer {
  /** One value, or rows of them. */
  readonly value: Outcome | Outcome[][];
  /** The calls of our functions on the way, the outermost last. */
  readonly calls: readonly Made[];
  /** The value as cells show it, by its number formats. */
  readonly texts: () => string[][];
}

function outcomeOf({ value, message }: engine.FunctionResultObject): Outcome {
  if (typeof value === "string") return faultOf(value, message) ?? value;
  if (typeof value === "number" && !Number.isFinite(value)) return tooLarge;
  return value ?? "";
}

const shown = ({ value, format }: engine.FunctionResultObject): string =>
  engine.helpers.formatValue(value, { format, locale: engine.DEFAULT_LOCALE });

/** Evaluates formulas one by one, each as if alone on a blank sheet. */
export function evaluator(): (formula: string) => Answer {
  const blank = model();
  const sheetId = blank.getters.getActiveSheetId();
  return (formula) => {
    const { result, calls } = heard(() =>
      blank.getters.evaluateFormulaResult(sheetId, respelled(withSign(formula)), { sheetId, col: 0, row: 0 }),
    );
    const columns = Array.isArray(result) ? result : [[result]];
    const rows = columns[0].map((_, row) => columns.map((column) => column[row]));
    const values = rows.map((row) => row.map(outcomeOf));
    return {
      value: values.length === 1 && values[0].length === 1 ? values[0][0] : values,
      calls,
      texts: () => rows.map((row) => row.map(shown)),
    };
  };
}

const withSign = (formula: string) => formula.trim().replace(/^=?/, "=");

/** The function that a formula is a single call of, as typed; undefined for anything larger. */
export function outermost(formula: string): string | undefined {
  try {
    const tree = engine.parse(respelled(withSign(formula)));
    return tree.type === "FUNCALL" ? tree.value.toUpperCase() : undefined;
  } catch {
    return undefined;
  }
}

export const isRows = (value: Outcome | Outcome[][]): value is Outcome[][] => Array.isArray(value);

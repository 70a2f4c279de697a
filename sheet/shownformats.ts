import type * as OSpreadsheet from "@odoo/o-spreadsheet";
import { standsFor } from "./lackedformats";

export type Engine = Pick<typeof OSpreadsheet, "registries">;

type Position = OSpreadsheet.CellPosition;
type Evaluated = OSpreadsheet.EvaluatedCell;

/** The engine writes a clock of twelve hours with a zero before it. */
const unpadded = (text: string): string => text.replace(/(^|\s)0(\d:\d\d)/, "$1$2");
const isTwelve = (format: string | undefined): boolean => format !== undefined && /hh.*\ba\b/.test(format);

/** The text of a number whose format only stands in for one that the engine lacks. */
const textOf = ({ value, format }: Pick<Evaluated, "value" | "format">): string | undefined =>
  typeof value === "number" ? standsFor(format)?.show(value) : undefined;

type Evaluation = new (...args: never[]) => { getEvaluatedCell(position: Position): Evaluated };
type Drawing = new (
  ...args: never[]
) => {
  getCellText(position: Position, how?: { readonly showFormula?: boolean }): string;
  readonly getters: OSpreadsheet.Getters;
};

/** Shows numbers by the formats that the engine lacks, wherever it hands out or draws the text of a cell. */
export function showLackedFormats({ registries: { coreViewsPluginRegistry, featurePluginRegistry } }: Engine): void {
  const Evaluated = coreViewsPluginRegistry.get("evaluation") as unknown as Evaluation;
  class Shown extends Evaluated {
    override getEvaluatedCell(position: Position): Evaluated {
      const cell = super.getEvaluatedCell(position);
      if (isTwelve(cell.format)) return { ...cell, formattedValue: unpadded(cell.formattedValue) } as Evaluated;
      const text = textOf(cell);
      return text === undefined ? cell : ({ ...cell, formattedValue: text } as Evaluated);
    }
  }
  coreViewsPluginRegistry.replace("evaluation", Shown as never);

  const Drawn = featurePluginRegistry.get("ui_sheet") as unknown as Drawing;
  class Text extends Drawn {
    override getCellText(position: Position, how?: { readonly showFormula?: boolean }): string {
      const formula = how?.showFormula && this.getters.getCell(position)?.isFormula;
      const cell = this.getters.getEvaluatedCell(position);
      const text = formula ? undefined : textOf(cell);
      const own = text ?? super.getCellText(position, how);
      return !formula && isTwelve(cell.format) ? unpadded(own) : own;
    }
  }
  featurePluginRegistry.replace("ui_sheet", Text as never);
}

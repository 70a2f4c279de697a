import type { CellPosition, Model } from "@odoo/o-spreadsheet";
import { letters } from "../../shared/xlsx/letters";

/** Rows that are looked through for a heading. */
const most = 700;

export interface Heading {
  readonly text: string;
  readonly unit: string;
  readonly row: number;
}

/** What the cells of a sheet are called: by the bold word above them, or by the label beside them. */
export class Headings {
  constructor(private readonly model: Model) {}

  private text(position: CellPosition): string {
    const { type, formattedValue } = this.model.getters.getEvaluatedCell(position);
    return type === "text" ? formattedValue.trim() : "";
  }

  private isBold(position: CellPosition): boolean {
    return this.model.getters.getCellComputedStyle(position).bold === true;
  }

  isHeading(position: CellPosition): boolean {
    return this.text(position) !== "" && this.isBold(position);
  }

  /** The heading that a cell stands under. */
  above({ sheetId, col, row }: CellPosition): Heading | undefined {
    for (let up = row - 1; up >= Math.max(0, row - most); up--) {
      const at = { sheetId, col, row: up };
      if (!this.isHeading(at)) continue;
      const over = { sheetId, col, row: up - 1 };
      const unit = up > 0 && !this.isBold(over) ? this.text(over) : "";
      return { text: this.text(at), unit: unit.length > 12 ? "" : unit, row: up };
    }
    return this.plainly({ sheetId, col, row });
  }

  /** Over numbers the nearest word heads them, bold or not. */
  private plainly({ sheetId, col, row }: CellPosition): Heading | undefined {
    if (this.text({ sheetId, col, row }) !== "") return undefined;
    for (let up = row - 1; up >= Math.max(0, row - most); up--) {
      const text = this.text({ sheetId, col, row: up });
      if (text) return { text, unit: "", row: up };
    }
    return undefined;
  }

  /** The words left of a cell in a form of label and value: nothing that is typed into, which has a wash of its own. */
  private label({ sheetId, col, row }: CellPosition): string {
    if (col !== 1) return "";
    const left = { sheetId, col: 0, row };
    const { bold, fillColor } = this.model.getters.getCellComputedStyle(left);
    return bold || fillColor ? "" : this.text(left);
  }

  /** "thickness, row 10", or "cover, your value", or "C10". */
  of(position: CellPosition): string {
    const above = this.above(position);
    const label = this.label(position);
    if (label) return above ? `${label}, ${above.text}` : label;
    return above ? `${above.text}, row ${position.row + 1}` : `${letters(position.col)}${position.row + 1}`;
  }
}

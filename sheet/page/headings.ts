import type { CellPosition, Model } from "@odoo/o-spreadsheet";
import { letters } from "../../shared/xlsx/letters";

/** Rows that are looked through for a heading. */
const most = 700;

export interface Heading {
  readonly text: string;
  readonly unit: string;
  readonly row: number;
}

/** What the cells of a sheet are called: by the head of their table, the bold word above them, or the label beside them. */
export class Headings {
  constructor(private readonly model: Model) {}

  private text(position: CellPosition): string {
    const { type, formattedValue } = this.model.getters.getEvaluatedCell(position);
    return type === "text" ? formattedValue.trim() : "";
  }

  /** The cell's own style: bold by a conditional format marks no heading. */
  private isBold(position: CellPosition): boolean {
    return this.model.getters.getCellStyle(position)?.bold === true;
  }

  isHeading(position: CellPosition): boolean {
    return this.text(position) !== "" && this.isBold(position);
  }

  /** The word over a cell in the first row of a table that reaches over its row: what stands beside the table is headed there as well. */
  private inTable(position: CellPosition): Heading | undefined {
    const { sheetId, row } = position;
    for (const { config, range } of this.model.getters.getTables(sheetId)) {
      const { top, bottom } = range.zone;
      if (!config.numberOfHeaders || row <= top || row > bottom) continue;
      const heading = this.heading({ ...position, row: top });
      if (heading) return heading;
    }
    return undefined;
  }

  private heading(at: CellPosition): Heading | undefined {
    const text = this.text(at);
    if (!text) return undefined;
    const over = { ...at, row: at.row - 1 };
    const unit = at.row > 0 && !this.isBold(over) ? this.text(over) : "";
    return { text, unit: unit.length > 12 ? "" : unit, row: at.row };
  }

  /** The heading that a cell stands under. */
  above({ sheetId, col, row }: CellPosition): Heading | undefined {
    const own = this.inTable({ sheetId, col, row });
    if (own) return own;
    for (let up = row - 1; up >= Math.max(0, row - most); up--) {
      const at = { sheetId, col, row: up };
      if (this.isHeading(at)) return this.heading(at);
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

  /** The label left of a cell in a form of labels and values; an input cell, which has a fill, is no label. */
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

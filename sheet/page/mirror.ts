import type { EvaluatedCell, Model } from "@odoo/o-spreadsheet";
import { letters } from "../../shared/xlsx/letters";

/** The grid is a canvas, mute to a screen reader: this table, out of sight, says the same. */

/** Beyond these the table would weigh more than it tells. */
const most = { rows: 600, columns: 40 };

const said = (cell: EvaluatedCell): string => (cell.message ? `${cell.formattedValue}: ${cell.message}` : cell.formattedValue);

const heading = (text: string, scope: "col" | "row") => Object.assign(document.createElement("th"), { scope, textContent: text });

export class Mirror {
  private cells: HTMLTableCellElement[] = [];
  private sheet = "";
  private due = false;

  constructor(
    private readonly model: Model,
    private readonly place: HTMLElement,
    private readonly here: HTMLElement,
  ) {}

  /** Looks again at the next frame, when the present run of changes is over. */
  refresh(): void {
    if (this.due) return;
    this.due = true;
    requestAnimationFrame(() => {
      this.due = false;
      this.write();
    });
  }

  private write(): void {
    const { getters } = this.model;
    const sheetId = getters.getActiveSheetId();
    const { numberOfRows, numberOfCols } = getters.getSheetSize(sheetId);
    const rows = Math.min(numberOfRows, most.rows);
    const columns = Math.min(numberOfCols, most.columns);
    const shape = `${sheetId} ${getters.getSheetName(sheetId)} ${rows} ${columns}`;
    if (shape !== this.sheet) {
      this.sheet = shape;
      this.lay(getters.getSheetName(sheetId), rows, columns);
    }
    for (const td of this.cells) {
      const cell = getters.getEvaluatedCell({ sheetId, col: Number(td.dataset.column), row: Number(td.dataset.row) });
      const words = said(cell);
      if (td.textContent === words) continue;
      td.textContent = words;
      td.dataset.value = String(cell.value ?? "");
    }
    const { col, row } = getters.getActivePosition();
    const words = `${letters(col)}${row + 1} ${said(getters.getEvaluatedCell({ sheetId, col, row }))}`;
    if (this.here.textContent !== words) this.here.textContent = words;
  }

  private lay(name: string, rows: number, columns: number): void {
    this.cells = [];
    const table = document.createElement("table");
    table.createCaption().textContent = name;
    const top = table.insertRow();
    top.append(heading("row", "col"), ...Array.from({ length: columns }, (_, column) => heading(letters(column), "col")));
    for (let row = 0; row < rows; row++) {
      const line = table.insertRow();
      line.append(heading(String(row + 1), "row"));
      for (let column = 0; column < columns; column++) {
        const td = line.insertCell();
        Object.assign(td.dataset, { cell: `${letters(column)}${row + 1}`, row, column });
        this.cells.push(td);
      }
    }
    this.place.replaceChildren(table);
  }
}

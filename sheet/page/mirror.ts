import type { EvaluatedCell, Model } from "@odoo/o-spreadsheet";
import { letters } from "../../shared/xlsx/letters";
import type { Announcements } from "./announcements";

/** The grid is a canvas, which a screen reader cannot read: this visually hidden table has the same content and follows the cursor. */

/** Most rows and columns of the table: of a larger sheet it holds the part around the cursor. */
const most = { rows: 600, columns: 40 };

/** A bar of block characters repeats the number beside it. */
const isBar = (text: string): boolean => /^█+$/.test(text);

const said = (cell: EvaluatedCell): string =>
  cell.message ? `${cell.formattedValue}: ${cell.message}` : isBar(cell.formattedValue) ? "" : cell.formattedValue;

const heading = (text: string, scope: "col" | "row") => Object.assign(document.createElement("th"), { scope, textContent: text });

/** The first of so many that hold a place, in steps of half a window. */
const windowAt = (place: number, room: number, all: number): number => {
  const step = Math.floor(room / 2);
  return Math.min(Math.max(0, Math.floor(place / step) - 1) * step, Math.max(0, all - room));
};

export interface Places {
  readonly mirror: HTMLElement;
  /** Tells where the cursor is, and what an entry did. */
  readonly here: HTMLElement;
  readonly spoken: HTMLElement;
  readonly grid: HTMLElement;
}

export class Mirror {
  private cells: HTMLTableCellElement[] = [];
  private shape = "";
  private due = false;

  constructor(
    private readonly model: Model,
    private readonly places: Places,
    private readonly announcements: Announcements,
  ) {}

  /** Updates in the next animation frame, once for a run of changes. */
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
    const { col, row } = getters.getActivePosition();
    const { numberOfRows, numberOfCols } = getters.getSheetSize(sheetId);
    const top = windowAt(row, most.rows, numberOfRows);
    const left = windowAt(col, most.columns, numberOfCols);
    const rows = Math.min(numberOfRows - top, most.rows);
    const columns = Math.min(numberOfCols - left, most.columns);
    const name = getters.getSheetName(sheetId);
    const shape = `${sheetId} ${name} ${top} ${rows} ${left} ${columns}`;
    if (shape !== this.shape) {
      this.shape = shape;
      this.lay(name, { top, rows, left, columns });
    }
    for (const td of this.cells) {
      const position = { sheetId, col: Number(td.dataset.column), row: Number(td.dataset.row) };
      const cell = getters.getEvaluatedCell(position);
      const isCurrent = position.col === col && position.row === row;
      if (isCurrent) td.setAttribute("aria-current", "true");
      else if (td.hasAttribute("aria-current")) td.removeAttribute("aria-current");
      const words = said(cell);
      if (td.textContent === words) continue;
      td.textContent = words;
      td.dataset.value = String(cell.value ?? "");
      if (this.announcements.isHeading(position)) td.setAttribute("role", "columnheader");
      else td.removeAttribute("role");
    }
    this.tell();
  }

  private tell(): void {
    const { here, spoken, grid } = this.places;
    const entered = this.announcements.entered();
    if (entered) spoken.textContent = entered;
    const words = this.announcements.here();
    if (here.textContent !== words) here.textContent = words;
    const field = this.announcements.field();
    for (const composer of grid.querySelectorAll(".o-composer"))
      if (composer.getAttribute("aria-label") !== field) composer.setAttribute("aria-label", field);
  }

  private lay(name: string, { top, rows, left, columns }: { top: number; rows: number; left: number; columns: number }): void {
    this.cells = [];
    const table = document.createElement("table");
    table.createCaption().textContent = name;
    const line = table.insertRow();
    line.append(heading("row", "col"), ...Array.from({ length: columns }, (_, i) => heading(letters(left + i), "col")));
    for (let row = top; row < top + rows; row++) {
      const tr = table.insertRow();
      tr.append(heading(String(row + 1), "row"));
      for (let column = left; column < left + columns; column++) {
        const td = tr.insertCell();
        Object.assign(td.dataset, { cell: `${letters(column)}${row + 1}`, row, column });
        this.cells.push(td);
      }
    }
    this.places.mirror.replaceChildren(table);
  }
}

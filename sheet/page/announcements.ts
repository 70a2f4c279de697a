import type { CellPosition, Model } from "@odoo/o-spreadsheet";
import { Headings } from "./headings";

/** Most results of an entry that are told: more would be noise. */
const most = 3;

/** What a screen reader hears: where the cursor is, and after an entry what it was and what it changed in its row. */
export class Announcements {
  private readonly headings: Headings;
  private row: { readonly at: CellPosition; readonly before: readonly string[] } | undefined;

  constructor(private readonly model: Model) {
    this.headings = new Headings(model);
  }

  private said(position: CellPosition): string {
    const { formattedValue, message } = this.model.getters.getEvaluatedCell(position);
    return message ? `${formattedValue}: ${message}` : formattedValue;
  }

  private wholeRow({ sheetId, row }: CellPosition): string[] {
    const { numberOfCols } = this.model.getters.getSheetSize(sheetId);
    return Array.from({ length: Math.min(numberOfCols, 60) }, (_, col) => this.said({ sheetId, col, row }));
  }

  /** Called before a cell takes an entry. */
  before(at: CellPosition): void {
    if (this.row?.at.sheetId === at.sheetId && this.row.at.row === at.row) return;
    this.row = { at, before: this.wholeRow(at) };
  }

  /** "thickness, row 10: 0.75; bake 45 min", once, when all is worked out; "" where nothing was entered. */
  entered(): string {
    const { row } = this;
    this.row = undefined;
    if (!row || this.model.getters.tryGetSheet?.(row.at.sheetId) === undefined) return "";
    const { at } = row;
    const after = this.wholeRow(at);
    const others = after.flatMap((words, col) => (col !== at.col && words !== row.before[col] ? [{ col, words }] : []));
    // A problem, and an answer in words, come before intermediate numbers.
    const isAnswer = (words: string) => words.startsWith("about ") || words.startsWith("#");
    const filled = others.filter(({ words }) => words !== "");
    const told = [...filled.filter(({ words }) => isAnswer(words)), ...filled.filter(({ words }) => !isAnswer(words))].slice(0, most);
    const each = told.map(({ col, words }) => {
      const above = this.headings.above({ ...at, col });
      const unit = above?.unit && !/[^\d.,-]/.test(words) ? ` ${above.unit}` : "";
      return above ? `${above.text} ${words}${unit}` : words;
    });
    return [`${this.headings.of(at)}: ${after[at.col] || "empty"}`, ...each].join("; ");
  }

  /** The cell with the cursor. */
  here(): string {
    const position = this.model.getters.getActivePosition();
    return `${this.headings.of(position)}: ${this.said(position) || "empty"}`;
  }

  /** The name of the field that is typed into. */
  field(): string {
    return this.headings.of(this.model.getters.getActivePosition());
  }

  isHeading(position: CellPosition): boolean {
    return this.headings.isHeading(position);
  }
}

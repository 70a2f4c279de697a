import { isNull, letters, next, quoted, refusal } from "./names.js";

export const references = new Map();

/** What a formula shows: whatever knows the functions by now shows a number. */
const calculated = (formula) => (/^=PORE\./i.test(formula) ? 1 : formula === "=bad" ? "#NAME?" : 0);

export class Range {
  constructor(sheet, row, column, rows, columns) {
    Object.assign(this, { sheet, row, column, rows, columns, key: `range${next()}` });
    references.set(this.key, this);
  }
  each(tell) {
    return Array.from({ length: this.rows }, (_, r) =>
      Array.from({ length: this.columns }, (_, c) => tell(this.sheet.cell(this.row + r, this.column + c), r, c)),
    );
  }
  get Address() {
    const corner = (row, column) => letters(column) + (row + 1);
    const [first, last] = [corner(this.row, this.column), corner(this.row + this.rows - 1, this.column + this.columns - 1)];
    return `${quoted(this.sheet.Name)}!${first === last ? first : `${first}:${last}`}`;
  }
  get RowIndex() {
    return this.row;
  }
  get ColumnIndex() {
    return this.column;
  }
  get CellCount() {
    return this.rows * this.columns;
  }
  get Formulas() {
    return this.each((cell) => cell.formula ?? cell.value ?? "");
  }
  get Values() {
    return this.each((cell) => cell.value ?? "");
  }
  get ValueTypes() {
    return this.each(({ value }) =>
      value === undefined || value === "" ? "Empty" : typeof value === "number" ? "Double" : /^#/.test(value) ? "Error" : "String",
    );
  }
  get NumberFormat() {
    return this.each((cell) => cell.format ?? "General");
  }
  guard() {
    this.each((cell) => {
      if (this.sheet.protected && cell.locked !== false) throw refusal("AccessDenied");
    });
  }
  set Formulas(rows) {
    this.guard();
    this.each((cell, r, c) => {
      const text = rows[r][c];
      if (typeof text === "string" && text.startsWith("=") && cell.format !== "@")
        Object.assign(cell, { formula: text, value: calculated(text) });
      else Object.assign(cell, { formula: undefined, value: text });
    });
  }
  set Values(rows) {
    this.Formulas = rows;
  }
  set NumberFormat(rows) {
    this.guard();
    this.each((cell, r, c) => {
      cell.format = rows[r][c];
    });
  }
  get Format() {
    const range = this;
    return {
      Font: {
        set Bold(on) {
          range.each((cell) => {
            cell.bold = on;
          });
        },
      },
      Protection: {
        get Locked() {
          return range
            .each((cell) => cell.locked !== false)
            .flat()
            .every(Boolean);
        },
      },
    };
  }
  get Worksheet() {
    return this.sheet;
  }
  GetCell(r, c) {
    return new Range(this.sheet, this.row + r, this.column + c, 1, 1);
  }
  GetResizedRange(rows, columns) {
    return new Range(this.sheet, this.row, this.column, this.rows + rows, this.columns + columns);
  }
  GetSpillParentOrNullObject() {
    const { spill } = this.sheet.cell(this.row, this.column);
    return spill ? this.sheet.GetRange(spill) : isNull;
  }
}

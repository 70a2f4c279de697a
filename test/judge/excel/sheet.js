import { columnOf, isNull, next } from "./names.js";
import { Range } from "./range.js";

export class Sheet {
  constructor(name) {
    Object.assign(this, { Id: `{${name}-${next()}}`, Name: name, cells: new Map(), protected: false });
    this.PageLayout = { SetPrintTitleRows: (rows) => Object.assign(this.PageLayout, { titles: rows }) };
  }
  cell(row, column) {
    const key = `${row},${column}`;
    if (!this.cells.has(key)) this.cells.set(key, {});
    return this.cells.get(key);
  }
  get Protection() {
    return { Protected: this.protected };
  }
  GetRange(address) {
    const [first, last = first] = address.replace(/\$/g, "").split(":");
    const [, a, b] = /^([A-Z]+)(\d+)$/.exec(first);
    const [, c, d] = /^([A-Z]+)(\d+)$/.exec(last);
    return new Range(this, b - 1, columnOf(a), d - b + 1, columnOf(c) - columnOf(a) + 1);
  }
  GetRangeByIndexes(...place) {
    return new Range(this, ...place);
  }
  GetUsedRangeOrNullObject() {
    const used = [...this.cells]
      .filter(([, { value, formula }]) => value !== undefined || formula)
      .map(([key]) => key.split(",").map(Number));
    if (!used.length) return isNull;
    const [rows, columns] = [0, 1].map((i) => Math.max(...used.map((at) => at[i])) + 1);
    return new Range(this, 0, 0, rows, columns);
  }
  Activate() {
    globalThis.book.active = this.Name;
  }
  Delete() {
    globalThis.book.sheets = globalThis.book.sheets.filter((sheet) => sheet !== this);
  }
}

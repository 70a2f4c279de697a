import { isNull, next, refusal } from "./names.js";
import { references } from "./range.js";
import { Sheet } from "./sheet.js";

class Part {
  constructor(xml) {
    Object.assign(this, { Id: `{part-${next()}}`, xml, namespace: /xmlns="([^"]*)"/.exec(xml)?.[1] });
  }
  GetXml() {
    return this.xml;
  }
  SetXml(xml) {
    this.guard();
    this.xml = xml;
  }
  guard() {
    if (book.readOnly) throw refusal("AccessDenied");
    book.writes++;
  }
}

const collection = (items, more = {}) => ({
  items,
  Item: (key) => {
    const found = items.find(({ Id, Name }) => Id === key || Name === key);
    if (!found) throw refusal("ItemNotFound");
    return found;
  },
  ...more,
});

const begun = () => ({
  sheets: [new Sheet("Sheet1")],
  parts: [],
  /** How often a part was written: each ends Excel's Undo. */
  writes: 0,
  names: {},
  opened: [],
  selected: ["Sheet1", "B2"],
  active: undefined,
  inserted: undefined,
  from1904: false,
  decimal: ".",
  editing: false,
  readOnly: false,
  /** Sheets that an insert brings before it fails, and the code of the failure. */
  insertion: undefined,
});

export const book = begun();
globalThis.book = book;
/** A new workbook in the same Excel. */
book.reset = () => void Object.assign(book, begun());

const sheetNamed = (name) => {
  const sheet = book.sheets.find(({ Name }) => Name === name);
  if (!sheet) throw refusal("ItemNotFound");
  return sheet;
};
book.sheet = sheetNamed;

const events = ["SelectionChanged", "Activated", "DataChanged", "Calculated", "RowSorted", "ColumnSorted", "Deleted"];
const registered = new Set();
book.registered = registered;

export const root = {
  SetInvocationArrayResults: () => null,
  GetAppRuntimeStartState: () => "Inactive",
  _RemoveReference: (key) => void references.delete(key),
  // Days as Excel counts them after February 1900.
  Functions: { Date: (year, month, day) => ({ Value: Date.UTC(year, month - 1, day) / 864e5 + 25569 - (book.from1904 ? 1462 : 0) }) },
  GetSelectedRange: () => sheetNamed(book.selected[0]).GetRange(book.selected[1]),
  get Worksheets() {
    return collection(book.sheets, {
      GetItem: sheetNamed,
      Add: (name) => {
        const sheet = new Sheet(name);
        book.sheets = [...book.sheets, sheet];
        return sheet;
      },
      ...Object.fromEntries(events.map((name) => [`_Register${name}Event`, () => void registered.add(name)])),
      _RegisterEventNameChanged: () => void registered.add("NameChanged"),
    });
  },
  get Names() {
    return {
      GetItemOrNullObject: (name) => {
        const place = book.names[name];
        return place ? { GetRangeOrNullObject: () => sheetNamed(place[0]).GetRange(place[1]) } : isNull;
      },
    };
  },
  get CustomXmlParts() {
    return collection(book.parts, {
      GetByNamespace: (namespace) => collection(book.parts.filter((part) => part.namespace === namespace)),
      Add: (xml) => {
        const part = new Part(xml);
        part.guard();
        book.parts.push(part);
        return part;
      },
    });
  },
  get Application() {
    return {
      CultureInfo: { NumberFormat: { NumberDecimalSeparator: book.decimal } },
      CreateWorkbook: (file) => ({ Open: () => void book.opened.push(file) }),
    };
  },
  InsertWorksheetsFromBase64: (file, { sheetNamesToInsert, SheetNamesToInsert = sheetNamesToInsert }) => {
    book.inserted = file;
    const names = SheetNamesToInsert.map((name) => (book.sheets.some(({ Name }) => Name === name) ? `${name} (2)` : name));
    const made = names.map((name) => new Sheet(name));
    for (const sheet of made) Object.assign(sheet.cell(0, 0), { formula: "=_xldudf_PORE_DYE(2)", value: "#NAME?" });
    book.sheets = [...book.sheets, ...made];
    if (book.insertion) throw refusal(book.insertion);
    return made.map(({ Id }) => Id);
  },
};

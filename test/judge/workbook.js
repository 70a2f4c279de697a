// Runs in the page: a workbook at the other end of the library's bridge. It takes the library's batches apart and plays their
// steps on plain objects, whose members are named as the batches name them. Protection, editing and failures are put on.
const letters = (column) => (column < 26 ? String.fromCharCode(65 + column) : letters(Math.floor(column / 26) - 1) + letters(column % 26));
const quoted = (name) => (/^\w+$/.test(name) ? name : `'${name.replace(/'/g, "''")}'`);
const columnOf = (word) => [...word].reduce((sum, letter) => sum * 26 + letter.charCodeAt(0) - 64, 0) - 1;
/** An object that is not there: steps lead on from it to nothing, and batches are told null. */
const isNull = {};
const refusal = (code, message) => Object.assign(new Error(message ?? code), { code });

let counter = 0;
const references = new Map();

class Range {
  constructor(sheet, row, column, rows, columns) {
    Object.assign(this, { sheet, row, column, rows, columns, key: `range${++counter}` });
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

/** Whatever knows the functions by now shows a number. */
const calculated = (formula) => (/^=PORE\./i.test(formula) ? 1 : formula === "=bad" ? "#NAME?" : 0);

class Sheet {
  constructor(name) {
    Object.assign(this, { Id: `{${name}-${++counter}}`, Name: name, cells: new Map(), protected: false });
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
    book.active = this.Name;
  }
  Delete() {
    book.sheets = book.sheets.filter((sheet) => sheet !== this);
  }
}

class Part {
  constructor(xml) {
    Object.assign(this, { Id: `{part-${++counter}}`, xml, namespace: /xmlns="([^"]*)"/.exec(xml)?.[1] });
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

globalThis.book = {
  sheets: [new Sheet("Sheet1")],
  parts: [],
  names: {},
  opened: [],
  selected: ["Sheet1", "B2"],
  editing: false,
  readOnly: false,
  /** Sheets that an insert brings before it fails, and the code of the failure. */
  insertion: undefined,
};

const sheetNamed = (name) => {
  const sheet = book.sheets.find(({ Name }) => Name === name);
  if (!sheet) throw refusal("ItemNotFound");
  return sheet;
};
book.sheet = sheetNamed;

const events = ["SelectionChanged", "Activated", "DataChanged", "Calculated", "RowSorted", "ColumnSorted", "Deleted"];
const registered = new Set();
book.registered = registered;

const root = {
  SetInvocationArrayResults: () => null,
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
    return { CreateWorkbook: (file) => ({ Open: () => void book.opened.push(file) }) };
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

/** What a step of a batch leads to; each path is walked once a batch. */
function walker(paths) {
  const known = new Map();
  const walk = (id) => {
    if (!known.has(id)) known.set(id, step(paths[id]));
    return known.get(id);
  };
  const step = ({ ObjectPathType: kind, Name, ParentObjectPathId, ArgumentInfo }) => {
    if (kind === 1 || kind === 2 || kind === 7) return root;
    if (kind === 6) return references.get(Name);
    const parent = walk(ParentObjectPathId);
    if (parent === isNull) return isNull;
    const given = ArgumentInfo?.Arguments ?? [];
    if (kind === 4) {
      parent[Name] ??= {};
      return parent[Name];
    }
    if (kind === 5) return parent.Item(...given);
    if (typeof parent[Name] !== "function") throw new Error(`this workbook has no ${Name}`);
    return parent[Name](...given);
  };
  return walk;
}

const pascal = (word) => word[0].toUpperCase() + word.slice(1);

function queried(object, words) {
  const told = object.key ? { _ReferenceId: object.key } : {};
  for (const word of words) {
    const steps = word.trim().split("/").map(pascal);
    const last = steps.pop();
    let [from, into] = [object, told];
    for (const step of steps) {
      into[step] ??= {};
      [from, into] = [from[step], into[step]];
    }
    into[last] = from[last];
  }
  if (object.Id) told.Id ??= object.Id;
  return told;
}

function act(walk, { ActionType: kind, Name, ObjectPathId, ArgumentInfo, QueryInfo }) {
  if (kind === 5) return null;
  const object = walk(ObjectPathId);
  if (object === isNull) return null;
  if (kind === 1) return object?.key ? { _ReferenceId: object.key } : object?.Id ? { Id: object.Id } : {};
  if (kind === 2)
    return object.items
      ? { _Items: object.items.map((item) => queried(item, QueryInfo.Select ?? ["id"])) }
      : queried(object, QueryInfo.Select);
  if (Name === "_KeepReference") return null;
  const given = ArgumentInfo?.Arguments ?? [];
  if (kind === 4) {
    object[Name] = given[0];
    return null;
  }
  return object[Name](...given) ?? null;
}

function played({ Actions, ObjectPaths }) {
  const results = [];
  try {
    if (book.editing) throw refusal("InvalidOperationInCellEditMode");
    const walk = walker(ObjectPaths);
    for (const action of Actions) results.push({ ActionId: action.Id, Value: act(walk, action) });
    return { Results: results };
  } catch (error) {
    if (!error.code) console.error(error.stack);
    return { Results: results, Error: { Code: error.code ?? "GeneralException", Message: error.message, Location: "" } };
  }
}

const bridge = {
  sendMessageToHost(text) {
    const { id, type, message } = JSON.parse(text);
    if (type !== 1) return;
    const body = played(message.body);
    toLibrary({ id, type: 1, message: { statusCode: 200, headers: {}, body } });
  },
};
const toLibrary = (message) => setTimeout(() => bridge.onMessageFromHost(JSON.stringify(message)));

/** Tells the library of an event, by the number that it has for it. */
book.tell = (type, message) =>
  toLibrary({ id: null, type: 3, message: { entries: [[65536, type, "Workbook", JSON.stringify(message), ++counter]] } });

/** Has a cell call a function: its id and its arguments, packed as Excel packs them. */
book.ask = (address, id, parameters) => {
  const call = ++counter;
  toLibrary({ id: null, type: 3, message: { entries: [[1, 1000, "", [call, id, parameters, address, 4], call]] } });
};

globalThis.beExcel = (platform = "PC") => {
  OfficeExtension.HostBridge.init(bridge);
  sayReady({ host: "Excel", platform });
};

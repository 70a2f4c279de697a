import { isFault, type Outcome } from "../../../../shared/outcome";
import { fromInternal, plainUnits } from "../../../../shared/unit";
import { catalogue } from "../../../../src/catalogue";
import { cautionsOf } from "../../../../src/cautions";
import { settings } from "../../../../src/shop";
import { versionText } from "../../../../src/version";
import { asksIn } from "../../../../src/workbook/formula";
import { readShop } from "../../../../src/workbook/kit";
import { refTo } from "../../../../src/workbook/place";
import { template } from "../../../../src/workbook/sheets/template";
import { dash, shownCells } from "../../../../src/workbook/shown";
import { valuesOf } from "../../../../src/workbook/still";
import { validationsOf } from "../../../../src/workbook/validation";
import { recalculated } from "../../../../tool/recalculated";
import { near } from "../../../within";

const books = (["US", "SI"] as const).flatMap((system) =>
  (["demo", "empty"] as const).map((filled) => {
    const whole = template(system, filled);
    return { system, filled, whole, cached: recalculated(whole) };
  }),
);

/** Built-in functions that Excel, LibreOffice 7.4 and the page's engine share. */
const shared = new Set(
  "ABS AND AVERAGEIFS CHAR CHOOSE COUNT COUNTIF COUNTIFS EDATE EXP FALSE FIND IF IFERROR INDEX INT ISERROR ISNA ISNUMBER ISTEXT LARGE LEFT LEN LN LOWER MATCH MAX MID MIN MOD NA OR PI RIGHT ROUND ROUNDUP ROW SQRT SUBSTITUTE SUM SUMIF SUMIFS SUMPRODUCT TEXT TRIM TRUE VALUE".split(
    " ",
  ),
);

describe.each(books)("the workbook, $system, $filled", ({ system, whole, cached }) => {
  const typed = valuesOf(whole.book.sheets);
  const formulas = (["live", "plain"] as const).flatMap((name) =>
    whole.book.sheets.flatMap((sheet) =>
      [...shownCells(sheet, name === "live" ? whole.live() : whole.plain, cached, typed).values()].flatMap(({ formula }) =>
        formula === undefined ? [] : [{ name, formula }],
      ),
    ),
  );

  it("asks every function of the catalogue", () => {
    const all = whole.book.sheets.flatMap(({ cells }) => [...cells.values()].flatMap(({ formula }) => (formula ? asksIn(formula) : [])));
    expect(new Set(all.map(({ contract }) => contract.name))).toEqual(new Set(catalogue.map(({ name }) => name)));
  });

  it("uses built-in functions that every program has, and no doubled quotes in a text", () => {
    for (const { name, formula } of formulas) {
      const bare = formula.replace(/"[^"]*"/g, '""').replace(/'[^']*'!/g, "");
      const used = [...bare.matchAll(/([A-Za-z_][\w.]*)\(/g)].map(([, word]) => word).filter((word) => !word.startsWith("_xldudf_PORE_"));
      expect(used.filter((word) => !shared.has(word))).toEqual([]);
      expect(formula.length).toBeLessThan(8192);
      expect(formula).not.toMatch(/[^,(=;&]""|""[^,)=;&<>]/);
      if (name === "plain") expect(formula).not.toContain("PORE");
    }
  });

  it("says of every setting what holds, as the functions take it", () => {
    const shop = whole.book.sheets.find(({ name }) => name === "My Shop")!;
    const rows = [...shop.cells].filter(([at, { value }]) => at.endsWith(",0") && settings.some(({ name }) => name === value));
    expect(rows).toHaveLength(settings.length);
    const row = (at: string) => Number(at.split(",")[0]);
    const here = (at: string) =>
      shop.cells.get(`${row(at)},1`)?.formula ? cached.value(shop.name, row(at), 1) : typed(refTo(shop.name, row(at), 1));
    const holds = readShop(rows.map(([at, { value }]) => [value, here(at)]) as never);
    const units = plainUnits(system, "g");
    for (const [at, { value }] of rows) {
      const setting = settings.find(({ name }) => name === value)!;
      const shown = cached.value(shop.name, row(at), 4);
      const due = holds.get(setting) as Outcome | undefined;
      if (typeof due === "number") near(shown as number, setting.kind ? fromInternal(due, units[setting.kind]) : due, 1e-12);
      // A tub or days off: what is typed reads as what holds.
      else if (typeof due === "object") expect(setting.read(shown as string, units)).toEqual(due);
      else expect(shown).toBe(due ?? "none");
    }
  });

  it("never tells the share of a lid's stress", () => {
    const asksLid = whole.book.sheets.flatMap((sheet) =>
      [...sheet.cells].flatMap(([at, { formula }]) =>
        formula && asksIn(formula).some(({ contract }) => contract.name === "LIDLOAD") ? [{ sheet: sheet.name, at, formula }] : [],
      ),
    );
    expect(asksLid.length).toBeGreaterThanOrEqual(2);
    for (const { sheet, at } of asksLid) {
      const [row, column] = at.split(",").map(Number);
      expect(typeof cached.value(sheet, row, column)).toBe("string");
      expect(cached.value(sheet, row, column + 1)).not.toEqual(expect.any(Number));
    }
  });

  it("finds every worked example right", () => {
    const { sheet, row, column } = whole.check;
    expect(cached.value(sheet, row, column)).toBe(`Porewise ${versionText}: ${catalogue.length} of ${catalogue.length} agree`);
  });
});

it("errors stand only in the rows of the demo that hold a slip, each with its reason", () => {
  for (const { filled, whole, cached } of books) {
    const faults = whole.book.sheets.flatMap((sheet) =>
      [...shownCells(sheet, whole.live(), cached).values()].flatMap(({ value }) => (isFault(value) ? [value.message] : [])),
    );
    if (filled === "empty") expect(faults).toEqual([]);
    else
      expect(new Set(faults.map((message) => message.split(" ").slice(0, 3).join(" ")))).toEqual(
        new Set(["weight is lighter", "no wood called", "too wet to"]),
      );
  }
});

it("one file fits a Letter page, the other A4", () =>
  expect(books.map(({ whole }) => whole.paper)).toEqual(["letter", "letter", "a4", "a4"]));

describe.each(books)("what the sheets owe whoever reads them, $system, $filled", ({ whole, cached }) => {
  const { sheets } = whole.book;
  const questions = ({ cells }: (typeof sheets)[number]) => [...cells.values()].flatMap(({ formula }) => (formula ? asksIn(formula) : []));

  // The self-check shows no answers to work by, and the handout says it in fewer words.
  it.each(sheets.filter(({ name }) => !["Self-check", "Handout"].includes(name)))("$name says the cautions of all it asks", (sheet) => {
    const said = [...sheet.cells.values()].filter(({ look }) => look === "caution").map(({ value }) => value);
    for (const { contract } of questions(sheet)) expect(said).toEqual(expect.arrayContaining(cautionsOf(contract.cautions)));
  });

  it("every chart is told in words and draws from cells", () => {
    const charts = sheets.flatMap(({ charts }) => charts);
    expect(charts.map(({ title }) => title)).toEqual(["Hours from the first load on", "In the oven", "The week of the plan"]);
    for (const { alt, series } of charts) {
      expect(alt.length).toBeGreaterThan(60);
      for (const { values } of series) expect(values.rows).toBeGreaterThan(2);
    }
  });

  it("a dash has its words in the same row", () => {
    for (const sheet of sheets) {
      const cells = [...shownCells(sheet, whole.plain, cached, valuesOf(sheets))];
      const rowOf = (at: string) => at.split(",")[0];
      for (const [at] of cells.filter(([, { value }]) => value === dash))
        expect(
          cells.filter(
            ([other, { value, refused, cell }]) =>
              rowOf(other) === rowOf(at) && String(value).length > 12 && (refused || ["words", "alarm"].includes(cell.look ?? "")),
          ),
        ).not.toEqual([]);
    }
  });

  it("no number is formatted to end in a bare point", () => {
    for (const sheet of sheets) for (const { format } of sheet.cells.values()) expect(format ?? "").not.toMatch(/\.#+$|\.#+[^0#?]/);
  });
});

it("every table has titles that differ, as the cells over it say them: Excel repairs a file where they do not", () => {
  const sheets = books[0].whole.book.sheets;
  const tables = sheets.flatMap((sheet) => sheet.tables.map((table) => ({ sheet, ...table })));
  expect(new Set(tables.map(({ name }) => name)).size).toBe(tables.length);
  for (const { sheet, titles, at } of tables) {
    expect(new Set(titles.map((title) => title.toLowerCase())).size).toBe(titles.length);
    expect(titles).toEqual(titles.map((_, i) => sheet.cells.get(`${at.row},${at.column + i}`)?.value));
  }
});

it("words of a validation fit the boxes that programs show them in", () => {
  for (const rule of books.flatMap(({ whole }) => whole.book.sheets.flatMap(validationsOf))) {
    const { inputMessage = "", errorMessage, values } = rule as { inputMessage?: string; errorMessage: string; values?: string[] };
    expect(inputMessage.length).toBeLessThanOrEqual(255);
    expect(errorMessage.length).toBeLessThanOrEqual(225);
    expect((values ?? []).join(",").length).toBeLessThanOrEqual(255);
  }
});

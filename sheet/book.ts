import type { Cell, Model, WorkbookData } from "@odoo/o-spreadsheet";
import { type Block, cellsOf, sizeOf } from "../shared/xlsx/address";
import { version } from "./enginedata";

/** Something of a workbook that the engine cannot give, and the engine's own words why. */
export interface Fault {
  /** `Costs!B3`, or what all of the workbook misses: "charts". */
  readonly what: string;
  readonly why: string;
}

export interface Told {
  readonly book: WorkbookData;
  readonly faults: readonly Fault[];
}

interface Plugin {
  readonly constructor: { readonly getters?: readonly string[] };
  export(data: object, squeezed: boolean): void;
}
interface Inner {
  readonly corePlugins: readonly Plugin[];
}

/** What a plugin is for, by one of the questions that it answers. */
const pieces: readonly (readonly [getter: string, words: string])[] = [
  ["getConditionalFormats", "conditional colors"],
  ["getDataValidationRules", "rules for what may be typed"],
  ["getCoreTables", "tables"],
  ["getFigures", "charts and pictures"],
  ["getChartDefinition", "charts"],
  ["getImage", "pictures"],
  ["getCellBorder", "borders"],
  ["getMerges", "merged cells"],
  ["getNamedRanges", "names of ranges"],
  ["getUserRowSize", "sizes of rows and columns"],
  ["isRowHiddenByUser", "hidden rows and columns"],
];

const answers = (plugin: Plugin, getter: string) => plugin.constructor.getters?.includes(getter) ?? false;
const wordsOf = (plugin: Plugin) => pieces.find(([getter]) => answers(plugin, getter))?.[1] ?? "a part of its formatting";
const reason = (error: unknown) => (error instanceof Error ? error.message : String(error));

/** Formulas that the engine cannot write down, each made to write what its cell shows until the work is done. */
function withoutFaulty<T>({ getters }: Model, faults: Fault[], work: () => T): T {
  const mended: object[] = [];
  for (const sheetId of getters.getSheetIds())
    for (const cell of getters.getCells(sheetId)) {
      if (!cell.isFormula) continue;
      try {
        cell.compiledFormula.toFormulaString(getters);
      } catch (error) {
        const position = getters.getCellPosition(cell.id);
        const at = getters.zoneToXC(sheetId, { left: position.col, right: position.col, top: position.row, bottom: position.row });
        faults.push({ what: `${getters.getSheetName(sheetId)}!${at}`, why: reason(error) });
        const { value } = getters.getEvaluatedCell(position);
        Object.defineProperty(cell.compiledFormula, "toFormulaString", { configurable: true, value: () => String(value ?? "") });
        mended.push(cell.compiledFormula);
      }
    }
  try {
    return work();
  } finally {
    for (const formula of mended) delete (formula as { toFormulaString?: unknown }).toFormulaString;
  }
}

/** Blocks of sheets, by their ids; undefined for all of one. */
type Reach = ReadonlyMap<string, readonly Block[] | undefined>;

/** The engine's keeper of cells with some of them alone. */
function withCells(plugin: Plugin, { getters }: Model, reach: Reach): Plugin {
  const of = (sheetId: string): readonly Cell[] => {
    const blocks = reach.has(sheetId) ? reach.get(sheetId) : [];
    if (!blocks || blocks.reduce((sum, block) => sum + sizeOf(block), 0) > 10_000) return getters.getCells(sheetId);
    return blocks.flatMap((block) => cellsOf(block).flatMap(({ row, column }) => getters.getCell({ sheetId, row, col: column }) ?? []));
  };
  const cells = Object.fromEntries(getters.getSheetIds().map((id) => [id, Object.fromEntries(of(id).map((cell) => [cell.id, cell]))]));
  return Object.assign(Object.create(plugin) as Plugin, { cells });
}

/**
 * All that a workbook of the engine is made of, as plain data that it opens again: the cells are texts. The engine's own way
 * squeezes formulas, compares the result and throws for the whole workbook where one formula is at fault; here each of its parts
 * is asked for its own piece, and what fails is named while the rest is kept.
 */
export function bookOf(model: Model): Told {
  const { book, faults } = sharedBookOf(model);
  return { book: structuredClone(book), faults };
}

/** The same without copying, so parts of it are the engine's own objects: for a model that does not change meanwhile. Holds at least the cells within reach. */
export function sharedBookOf(model: Model, reach?: Reach): Told {
  const faults: Fault[] = [];
  const data = { version, sheets: [], styles: {}, formats: {}, borders: {}, uniqueFigureIds: true } as Partial<WorkbookData>;
  for (const own of (model as unknown as Inner).corePlugins) {
    const plugin = reach && answers(own, "getTranslatedCellFormula") ? withCells(own, model, reach) : own;
    try {
      plugin.export(data, false);
    } catch (error) {
      if (answers(plugin, "getTranslatedCellFormula")) withoutFaulty(model, faults, () => plugin.export(data, false));
      else faults.push({ what: wordsOf(plugin), why: reason(error) });
    }
  }
  if (!data.sheets?.length) throw new Error(faults[0]?.why ?? "there is no sheet");
  data.revisionId = "START_REVISION";
  return { book: data as WorkbookData, faults };
}

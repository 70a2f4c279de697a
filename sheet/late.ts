import type * as OSpreadsheet from "@odoo/o-spreadsheet";

export type Engine = Pick<typeof OSpreadsheet, "registries">;

/** What the engine makes of the text of a formula. */
interface Compiled {
  usesSymbol(name: string): boolean;
}
interface Compiler {
  readonly prototype: Compiled;
  Compile(text: string, sheetId: string, getters: object): Compiled;
}
interface Book {
  readonly sheets: readonly { readonly cells: Readonly<Record<string, unknown>> }[];
}
type Cells = new (
  ...args: never[]
) => {
  readonly getters: object;
  import(book: Book): void;
  importCell(
    sheetId: string,
    content?: string,
    style?: unknown,
    format?: string,
    compiled?: Compiled,
  ): { readonly compiledFormula: Compiled };
  beforeHandle(command: OSpreadsheet.CoreCommand): void;
};

/** Stands before the text of a formula that the engine is not to compile yet. */
const late = "\u0001";

/** What compiling makes known. */
const fields = [
  "sheetId",
  "tokens",
  "literalValues",
  "symbols",
  "isBadExpression",
  "normalizedFormula",
  "execute",
  "rangeDependencies",
  "hasDependencies",
];

/** After these, the text of a formula would mean other cells. */
const moving = new Set<string>([
  "ADD_COLUMNS_ROWS",
  "REMOVE_COLUMNS_ROWS",
  "MOVE_RANGES",
  "CREATE_SHEET",
  "DELETE_SHEET",
  "DUPLICATE_SHEET",
  "RENAME_SHEET",
  "CREATE_NAMED_RANGE",
  "UPDATE_NAMED_RANGE",
  "DELETE_NAMED_RANGE",
] satisfies OSpreadsheet.CoreCommand["type"][]);

type Known = Record<string, unknown>;

/** How each formula that waits is compiled. */
const compiling = new WeakMap<object, () => Compiled>();

function compiled(formula: Compiled): Compiled {
  const compile = compiling.get(formula);
  if (!compile) return formula;
  compiling.delete(formula);
  for (const name of ["usesSymbol", ...fields]) delete (formula as unknown as Known)[name];
  return Object.assign(formula, compile());
}

const compiledAtSight: PropertyDescriptorMap = Object.fromEntries(
  fields.map((name) => [
    name,
    {
      configurable: true,
      enumerable: true,
      get(this: Compiled) {
        return (compiled(this) as unknown as Known)[name];
      },
    },
  ]),
);

/** A formula that compiles itself when somebody asks for what compiling makes known. */
function formulaOf(compiler: Compiler, text: string, compile: () => Compiled): Compiled {
  const formula = Object.create(compiler.prototype, compiledAtSight) as Compiled;
  compiling.set(formula, compile);
  formula.usesSymbol = (name) => text.toUpperCase().includes(name.toUpperCase()) && compiled(formula).usesSymbol(name);
  return formula;
}

/** The engine compiles every formula while a workbook opens. Here one is compiled when it is calculated, moved or written down first. */
export function compileLate({ registries: { corePluginRegistry } }: Engine): void {
  const OwnCells = corePluginRegistry.get("cell") as unknown as Cells;
  class LateCells extends OwnCells {
    private compiler: Compiler | undefined;
    private readonly waiting = new Set<Compiled>();

    override import(book: Book): void {
      const sheets = book.sheets.map((sheet) => {
        const cells = { ...sheet.cells };
        for (const at in cells) {
          const text = cells[at];
          // What is told as the way from one formula to the next needs the first of them.
          if (typeof text !== "string") return sheet;
          if (text.startsWith("=")) cells[at] = late + text;
        }
        return { ...sheet, cells };
      });
      super.import({ ...book, sheets });
    }

    override importCell(sheetId: string, content?: string, style?: unknown, format?: string, compiled?: Compiled) {
      if (!content?.startsWith(`${late}=`)) return super.importCell(sheetId, content, style, format, compiled);
      this.compiler ??= super.importCell(sheetId, "=1").compiledFormula.constructor as unknown as Compiler;
      const { compiler, getters, waiting } = this;
      const text = content.slice(late.length);
      const formula = formulaOf(compiler, text, () => {
        waiting.delete(formula);
        return compiler.Compile(text, sheetId, getters);
      });
      waiting.add(formula);
      return super.importCell(sheetId, undefined, style, format, formula);
    }

    override beforeHandle(command: OSpreadsheet.CoreCommand): void {
      if (moving.has(command.type)) this.waiting.forEach(compiled);
      super.beforeHandle(command);
    }
  }
  corePluginRegistry.replace("cell", LateCells as never);
}

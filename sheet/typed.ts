import type * as OSpreadsheet from "@odoo/o-spreadsheet";
import { fractions } from "../shared/numberformat";
import { readTyped } from "../shared/typed";
import { standsFor, toEngine } from "./lackedformats";

type Helpers = Pick<typeof OSpreadsheet.helpers, "isDateTime" | "isDateTimeFormat" | "isNumber" | "toNumber">;

/** What is typed into a cell: words, and the number format that the engine would give the cell with them. */
export interface Typed {
  readonly content: string;
  readonly format?: string;
}

/** `3/4`, `1 1/8`, `1-1/2`, `½`: a part of one, alone. With a year in it, it is a date. */
function fractionOf(text: string): number | undefined {
  if (!/[/½⅓⅔¼¾⅛⅜⅝⅞]/.test(text) || /\d{4}/.test(text)) return undefined;
  const read = readTyped(text);
  return read && !read.rest && Number.isFinite(read.number) ? read.number : undefined;
}

/**
 * What a cell takes of what was typed. The engine takes `3/4` and `1 1/2` for days and gives their format to the cell, which
 * then turns every later number into a day: here a fraction is a number, and a cell that has a number format keeps it.
 */
function taken(typed: Typed, own: string | undefined, locale: OSpreadsheet.Locale, helpers: Helpers): Typed {
  const { content } = typed;
  if (own === "@") return { content, format: own };
  if (/^[='\n]/.test(content) || helpers.isDateTimeFormat(own ?? "")) return typed;
  const format = own || undefined;
  const fraction = fractionOf(content);
  if (fraction !== undefined) return { content: String(fraction), format: format ?? toEngine(fractions) };
  if (!format || helpers.isNumber(content, locale) || !helpers.isDateTime(content, locale)) return typed;
  // A clock time is a number where hours are due, and words that nobody can calculate with anywhere else.
  const isHour = standsFor(format)?.takesTimes && !/[-/]/.test(content);
  return { content: isHour ? String(helpers.toNumber({ value: content }, locale)) : `'${content}`, format };
}

export type Engine = Pick<typeof OSpreadsheet, "registries" | "helpers">;

type Handler = new (
  ...args: never[]
) => {
  handle(command: OSpreadsheet.CoreCommand): void;
  readonly getters: Pick<OSpreadsheet.Getters, "getCell" | "getLocale">;
};

/** Hands the engine's own keeper of cells what was typed as this module reads it. */
export function readTypedCells({ registries: { corePluginRegistry }, helpers }: Engine): void {
  const Cells = corePluginRegistry.get("cell") as unknown as Handler;
  class TypedCells extends Cells {
    override handle(command: OSpreadsheet.CoreCommand): void {
      super.handle(command.type === "UPDATE_CELL" && command.content ? { ...command, ...this.taken(command, command.content) } : command);
    }

    private taken(cell: OSpreadsheet.UpdateCellCommand, content: string): Typed {
      return taken({ content, format: cell.format }, this.getters.getCell(cell)?.format, this.getters.getLocale(), helpers);
    }
  }
  corePluginRegistry.replace("cell", TypedCells as never);
}

import type { Model } from "@odoo/o-spreadsheet";
import { workbookOf } from "../../shared/xlsx/parts";
import { unzip } from "../../shared/xlsx/unzip";
import type { Beside } from "./beside/beside";
import { carried } from "./carried";
import { contents } from "./contents/contents";
import { structureIn, structureOf } from "./kept/structure";
import { type Engine as Writing, written } from "./kept/written";
import { lost } from "./lost";
import { type Engine as Opening, openedParts } from "./open";

export type { Beside } from "./beside/beside";
export type Engine = Writing & Opening;

/** What of a workbook cannot be written into the file that it came from, in words. */
function beyondOf(book: object): readonly string[] {
  const { beyond, sheets, steps } = structureOf(book);
  const known = new Set([...Object.keys(sheets), ...steps.map(({ sheet }) => sheet)]);
  const strange = (book as { sheets: readonly { id: string }[] }).sheets.some(({ id }) => !known.has(id));
  const words = [...new Set(beyond.map((one) => one.words))];
  return strange ? [...words, "sheets that were inserted"] : words;
}

export interface Losses {
  /** What was made on the page that the file cannot take. */
  readonly because: readonly string[];
  /** What the file holds that goes. */
  readonly lost: readonly string[];
}

/** What saving would lose of the file that a workbook came from; nothing where it is written into that file. */
export function lossesOf(book: object, { file }: Beside): Losses {
  const because = file ? beyondOf(book) : [];
  if (!file || !because.length) return { because, lost: [] };
  const workbook = workbookOf(unzip(file));
  return { because, lost: lost(workbook, contents(workbook)) };
}

/** As much of the engine's data as tells what saving would lose. */
export const shapeOf = (model: Model): object => ({
  structure: structureIn(model),
  sheets: model.getters.getSheetIds().map((id) => ({ id })),
});

/** The workbook of the page as a file for any spreadsheet program: the file that it came from, with the changes in it. */
export async function saved(model: Model, beside: Beside, engine: Engine): Promise<Uint8Array> {
  const { file } = beside;
  if (!file || beyondOf(shapeOf(model)).length) return carried(model, beside, engine);
  return written(model, { ...beside, file }, engine, (workbook) => openedParts(workbook, engine));
}

import type { Model } from "@odoo/o-spreadsheet";
import type { Block } from "../../../shared/xlsx/address";
import type { Axis } from "../../../shared/xlsx/move";
import { blocksOf } from "./reach";

/** What was done to the structure of a workbook since its file was opened, by the engine's ids of sheets. */
export type Step =
  | { readonly do: "lines"; readonly sheet: string; readonly axis: Axis; readonly at: number; readonly by: number }
  | {
      readonly do: "block";
      readonly sheet: string;
      readonly block: Block;
      readonly to: { readonly sheet: string; readonly row: number; readonly column: number };
    }
  | { readonly do: "add"; readonly sheet: string }
  | { readonly do: "copy"; readonly sheet: string; readonly from: string }
  | { readonly do: "remove"; readonly sheet: string };

/** Something that was made on a sheet, in words. */
export interface Beyond {
  readonly words: string;
  readonly sheet: string;
}

/** What ties a workbook on the page to its file: it travels with the engine's data, and undo undoes it. */
export interface Structure {
  /** The parts of the file's sheets, by the engine's ids. */
  readonly sheets: Readonly<Record<string, string>>;
  readonly steps: readonly Step[];
  /** What was made or changed on the page that cannot be written into a file as it came, in words. */
  readonly beyond: readonly Beyond[];
  /** Rules that were made, changed or taken away, each by its sheet and its own id; and sheets whose groups were. */
  readonly touched: readonly string[];
  /** Where anything was done, as ranges by sheet; undefined where that is not known, and everything is compared. */
  readonly reached?: Readonly<Record<string, readonly string[]>>;
}

export const noStructure: Structure = { sheets: {}, steps: [], beyond: [], touched: [] };

export const touchKey = (sheetId: string, id: string): string => `${sheetId} ${id}`;

export function structureOf(book: object): Structure {
  const { beyond = [], ...own } = (book as { structure?: Partial<Structure> }).structure ?? {};
  // Versions kept by older pages hold words only.
  return { ...noStructure, ...own, beyond: beyond.map((one) => (typeof one === "string" ? { words: one, sheet: "" } : one)) };
}

/** The part of the engine's data that tells what was done to the structure. */
export function structureIn(model: Model): Structure {
  const data = {};
  for (const plugin of (model as unknown as { corePlugins: readonly { structure?: unknown; export(data: object): void }[] }).corePlugins)
    if ("structure" in plugin) plugin.export(data);
  return structureOf(data);
}

/** What saving must compare, by the engine's ids of sheets: some blocks, or a whole sheet; sheets not listed are unchanged. */
export function reachIn({ steps, reached }: Structure, sheets: readonly string[]): ReadonlyMap<string, readonly Block[] | undefined> {
  if (!reached || steps.length) return new Map(sheets.map((id) => [id, undefined]));
  return new Map(Object.entries(reached).map(([id, ranges]) => [id, blocksOf(ranges)]));
}

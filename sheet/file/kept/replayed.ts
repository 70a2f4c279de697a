import type { Move } from "../../../shared/xlsx/move";
import { moved } from "../../../shared/xlsx/moved/book";
import type { Book } from "../../../shared/xlsx/moved/bookparts";
import { movedRanges, shifts } from "../../../shared/xlsx/moved/ranges";
import { workbookOf } from "../../../shared/xlsx/parts";
import { addSheet } from "../../../shared/xlsx/sheets/add";
import { copySheet } from "../../../shared/xlsx/sheets/copy";
import { removeSheet } from "../../../shared/xlsx/sheets/remove";
import type { Parts } from "../../../shared/xlsx/unzip";
import type { Step, Structure } from "./structure";

/** A file with the steps of a structure made in it. */
export interface Replayed {
  readonly book: Book;
  /** The parts of sheets, by the engine's ids. */
  readonly paths: ReadonlyMap<string, string>;
  /** Cells whose formulas reach other cells than in the file, by the part of their sheet. */
  readonly resized: ReadonlyMap<string, ReadonlySet<string>>;
}

/** A name that stands for a sheet until it gets its own. */
function freeName({ sheets }: Book): string {
  const taken = new Set(sheets.map(({ name }) => name.toLowerCase()));
  let number = sheets.length + 1;
  while (taken.has(`sheet${number}`)) number++;
  return `Sheet${number}`;
}

export function replayed(file: Parts, { sheets, steps }: Structure): Replayed {
  const { parts, path, sheets: listed } = workbookOf(new Map(file));
  const book: Book = { parts, path, sheets: [...listed] };
  const paths = new Map(Object.entries(sheets));
  const resized = new Map<string, Set<string>>();
  const note = (found: ReadonlyMap<string, readonly string[]>) => {
    for (const [sheet, addresses] of found) {
      const own = resized.get(sheet) ?? new Set();
      for (const address of addresses) own.add(address);
      resized.set(sheet, own);
    }
  };
  const apply = (move: Move) => {
    for (const { name, path: sheet } of book.sheets)
      if (shifts(name, move) && resized.has(sheet))
        resized.set(sheet, new Set([...resized.get(sheet)!].map((address) => movedRanges(address, move)).filter(Boolean)));
    note(moved(book, move));
  };
  const nameOf = (id: string) => book.sheets.find((one) => one.path === paths.get(id))?.name;
  const make: { readonly [K in Step["do"]]: (step: Extract<Step, { do: K }>) => void } = {
    lines: ({ sheet, axis, at, by }) => apply({ kind: "lines", sheet: nameOf(sheet)!, axis, at, by }),
    block: ({ sheet, block, to }) => {
      const there = nameOf(to.sheet);
      if (there !== undefined) apply({ kind: "block", sheet: nameOf(sheet)!, block, to: { ...to, sheet: there } });
    },
    add: ({ sheet }) => paths.set(sheet, addSheet(book, freeName(book))),
    copy: ({ sheet, from }) => paths.set(sheet, copySheet(book, paths.get(from)!, freeName(book))),
    remove: ({ sheet }) => {
      note(removeSheet(book, paths.get(sheet)!));
      resized.delete(paths.get(sheet)!);
      paths.delete(sheet);
    },
  };
  for (const step of steps) if (step.do === "add" || paths.has(step.do === "copy" ? step.from : step.sheet)) make[step.do](step as never);
  return { book, paths, resized };
}

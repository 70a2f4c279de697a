import { sheetName } from "../move";
import { moved } from "../moved/book";
import type { Book } from "../moved/bookparts";
import { edit } from "../package";
import { relationsOf } from "../parts";
import { retagged } from "../retag";
import { type Change, changed } from "../xml";
import { listed, withPlaces } from "./listed";

/** Puts sheets in an order; those that are not named, such as chart sheets, stay where they are. */
export function orderSheets(book: Book, paths: readonly string[]): void {
  const ids = new Map(relationsOf(book.parts, book.path).map(({ id, path }) => [path, id]));
  edit(book.parts, book.path, (xml) => {
    const sheets = listed(xml);
    const wanted = paths.map((path) => sheets.findIndex(({ id }) => id === ids.get(path))).filter((place) => place >= 0);
    const slots = [...wanted].sort((a, b) => a - b);
    if (slots.every((slot, i) => slot === wanted[i])) return xml;
    const order = sheets.map((_, place) => place);
    slots.forEach((slot, i) => {
      order[slot] = wanted[i];
    });
    const changes: Change[] = sheets.map(({ start, end }, i) => {
      const from = sheets[order[i]];
      return { start, end, text: xml.slice(from.start, from.end) };
    });
    return withPlaces(changed(xml, changes), (place) => order.indexOf(place));
  });
  book.sheets = paths.flatMap((path) => book.sheets.find((one) => one.path === path) ?? []);
}

/** Renames sheets, in every reference too. */
export function renameSheets(book: Book, names: ReadonlyMap<string, string>): void {
  const map = new Map([...names].map(([path, name]) => [sheetName(book.sheets.find((one) => one.path === path)!.name), name]));
  moved(book, { kind: "names", sheets: map });
  const ids = new Map(relationsOf(book.parts, book.path).map(({ id, path }) => [id, path]));
  edit(book.parts, book.path, (xml) =>
    changed(
      xml,
      listed(xml).flatMap((tag) => {
        const name = names.get(ids.get(tag.id) ?? "");
        return name === undefined ? [] : [retagged(xml, tag, { name })];
      }),
    ),
  );
  book.sheets = book.sheets.map((one) => ({ ...one, name: names.get(one.path) ?? one.name }));
}

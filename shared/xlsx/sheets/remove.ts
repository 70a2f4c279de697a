import { moved } from "../moved/book";
import type { Book } from "../moved/bookparts";
import { speakOf } from "../moved/columns";
import { edit, undeclare, unrelate } from "../package";
import { relationsOf, relationsPath, textOf } from "../parts";
import type { Parts } from "../unzip";
import { changed, read } from "../xml";
import { listed, placeOf, withPlaces } from "./listed";

/** Parts that can be reached from the package. */
function reached(parts: Parts): Set<string> {
  const found = new Set<string>([""]);
  const waiting = [""];
  for (let from = waiting.pop(); from !== undefined; from = waiting.pop())
    for (const { path, outside } of relationsOf(parts, from))
      if (!outside && parts.has(path) && !found.has(path)) {
        found.add(path);
        waiting.push(path);
      }
  return found;
}

export function removeSheet(book: Book, path: string): ReadonlyMap<string, readonly string[]> {
  const { parts } = book;
  const gone = book.sheets.find((one) => one.path === path)!;
  const place = placeOf(book, path);
  const before = reached(parts);
  for (const { kind, path: table } of relationsOf(parts, path))
    if (kind === "table" && parts.has(table))
      speakOf(book, { table: read(textOf(parts, table)).attributes.displayName ?? "", columns: undefined });
  const resized = moved(book, { kind: "gone", sheet: gone.name });
  const { id } = relationsOf(parts, book.path).find((one) => one.path === path)!;
  edit(parts, book.path, (xml) => {
    const own = listed(xml)[place];
    return withPlaces(changed(xml, [{ start: own.start, end: own.end, text: "" }]), (one) =>
      one === place ? undefined : one > place ? one - 1 : one,
    );
  });
  unrelate(parts, book.path, id);
  const after = reached(parts);
  const dropped = [...before].filter((one) => one && !after.has(one));
  for (const one of dropped) {
    parts.delete(one);
    parts.delete(relationsPath(one));
  }
  undeclare(parts, new Set(dropped.flatMap((one) => [one, relationsPath(one)])));
  book.sheets = book.sheets.filter((one) => one.path !== path);
  return resized;
}

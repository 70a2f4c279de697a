import { relationsOf, textOf, workbookOf } from "./parts";
import { isWhole } from "./scan";
import { unzip } from "./unzip";

/** Thrown instead of offering a damaged file; the message says what is missing. */
export class NotWhole extends Error {}

const isXml = (path: string) => /\.(?:xml|rels)$/i.test(path);

/** What is wrong with a file that was just written, in words; undefined where it is sound. `before` is the file that it was made from. */
export function flawOf(file: Uint8Array, before?: ReadonlyMap<string, Uint8Array>): string | undefined {
  const parts = unzip(file);
  for (const path of parts.keys()) {
    // Parts that are unchanged need no check.
    if (!isXml(path) || before?.get(path) === parts.get(path)) continue;
    const old = before?.get(path);
    if (sameBytes(parts.get(path)!, old)) continue;
    if (!isWhole(textOf(parts, path))) return `its part ${path} is not well formed`;
  }
  const book = workbookOf(parts);
  for (const { path } of [{ path: book.path }, ...book.sheets])
    for (const one of relationsOf(parts, path))
      if (!one.outside && !parts.has(one.path) && !(before && !before.has(one.path) && before.has(path)))
        return `its part ${one.path} is missing`;
  return undefined;
}

export function sameBytes(a: Uint8Array, b: Uint8Array | undefined): boolean {
  if (a === b || a.length !== b?.length) return a === b;
  for (let i = 0; i < a.length; i++) if (a[i] !== b[i]) return false;
  return true;
}

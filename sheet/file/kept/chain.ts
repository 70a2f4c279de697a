import type { Book } from "../../../shared/xlsx/moved/bookparts";
import { dropPart } from "../../../shared/xlsx/package";
import { relationIn, relationsOf, textOf } from "../../../shared/xlsx/parts";
import type { Parts } from "../../../shared/xlsx/unzip";
import { encoded } from "../../../shared/xlsx/xml";
import type { Structure } from "./structure";

/** The order of calculation names cells with formulas: one that is no formula any more must not be in it. */
function withoutChain(parts: Parts, workbook: string, gone: (address: string, sheet: number) => boolean, all: boolean): void {
  const relation = relationsOf(parts, workbook).find(({ kind }) => kind === "calcChain");
  if (!relation || !parts.has(relation.path)) return;
  let sheet = 0;
  let left = 0;
  const xml = textOf(parts, relation.path);
  const now = xml.replace(/<(?:\w+:)?c\b[^>]*\/>/g, (tag) => {
    sheet = Number(/\si="(\d+)"/.exec(tag)?.[1] ?? sheet);
    if (gone(/\sr="([^"]*)"/.exec(tag)?.[1] ?? "", sheet)) return "";
    left++;
    // The sheet is said where it changes: here it is said of each that may follow another.
    return / i="/.test(tag) ? tag : tag.replace(/\s*\/>$/, ` i="${sheet}"/>`);
  });
  const removed = (xml.match(/<(?:\w+:)?c\b/g)?.length ?? 0) - left;
  if (!all && !removed) return;
  if (!all && left) {
    parts.set(relation.path, encoded(now));
    return;
  }
  dropPart(parts, workbook, relation.id, relation.path);
}

/** Takes cells that hold no formula any more out of the order of calculation; all of it where lines or sheets moved. */
export function chain({ parts, path, sheets }: Book, { steps }: Structure, removed: ReadonlyMap<string, ReadonlySet<string>>): void {
  const numbers = new Map<number, string>();
  const relations = new Map(relationsOf(parts, path).map(({ id, path: part }) => [id, part]));
  for (const [tag] of textOf(parts, path).matchAll(/<(?:\w+:)?sheet\s[^>]*>/g)) {
    const part = relations.get(relationIn(tag));
    if (part && sheets.some((one) => one.path === part)) numbers.set(Number(/\ssheetId="(\d+)"/.exec(tag)?.[1]), part);
  }
  if (!steps.length && !removed.size) return;
  withoutChain(parts, path, (address, sheet) => removed.get(numbers.get(sheet) ?? "")?.has(address) ?? false, steps.length > 0);
}

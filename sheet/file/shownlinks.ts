import { relationsOf, type Workbook } from "../../shared/xlsx/parts";
import { linkElements, parted } from "./beside/links";
import type { Contents } from "./contents/contents";

/** Links as the engine holds them, in place of the text of their cells. */
export function shownLinks({ root, part, values }: Contents, { parts }: Workbook, ids: ReadonlyMap<string, string>): Map<string, string> {
  const links = linkElements(root);
  const targets = new Map(links.length ? relationsOf(parts, part.path).map(({ id, target }) => [id, target]) : []);
  const found = new Map<string, string>();
  for (const { attributes } of links) {
    const { ref = "", location = "", display } = attributes;
    const text = values.get(ref);
    if (text === undefined) continue;
    const id = Object.entries(attributes).find(([name]) => /:id$/.test(name))?.[1];
    const sheet = ids.get(parted(location)[0]);
    const target = targets.get(id ?? "") ?? (sheet && `o-spreadsheet://${sheet}`);
    const label = (display || text.replace(/^'/, "")).replace(/[[\]\n]/g, " ");
    if (target && /^(https?:|mailto:|o-spreadsheet:)/i.test(target) && !/[()\s]/.test(target)) found.set(ref, `[${label}](${target})`);
  }
  return found;
}

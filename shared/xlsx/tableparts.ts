import { edit } from "./package";
import { relationsOf, relationsPath } from "./parts";
import { retagged } from "./retag";
import { scan } from "./scan";
import type { Parts } from "./unzip";
import { type Change, changed } from "./xml";

/** A part that nothing refers to any more, and what was said of it. */
export function dropPart(parts: Parts, from: string, id: string, path: string): void {
  edit(parts, relationsPath(from), (xml) =>
    xml.replace(/<(?:\w+:)?Relationship\s[^>]*>/g, (tag) => (/\sId="([^"]*)"/.exec(tag)?.[1] === id ? "" : tag)),
  );
  parts.delete(path);
  parts.delete(relationsPath(path));
  edit(parts, "[Content_Types].xml", (xml) =>
    xml.replace(/<(?:\w+:)?Override\b[^>]*>/g, (tag) =>
      tag.includes(`PartName="/${path}"`) || tag.includes(`PartName="/${relationsPath(path)}"`) ? "" : tag,
    ),
  );
}

/** Takes a table's part off its sheet; what stands in its cells stays. */
export function dropTable(parts: Parts, sheet: string, path: string): void {
  const id = relationsOf(parts, sheet).find((one) => one.path === path)?.id ?? "";
  edit(parts, sheet, (xml) => {
    const changes: Change[] = [];
    let left = 0;
    let gone: Change | undefined;
    scan(xml, {
      close(tag, end) {
        if (tag.local === "tablePart") {
          if (new RegExp(`\\s\\w+:id\\s*=\\s*["']${id}["']`).test(xml.slice(tag.start, tag.open)))
            changes.push({ start: tag.start, end, text: "" });
          else left++;
        }
        if (tag.local === "tableParts") {
          gone = { start: tag.start, end, text: "" };
          if (left) changes.push(retagged(xml, tag, { count: left }));
        }
      },
    });
    return changed(xml, left || !gone ? changes : [gone]);
  });
  dropPart(parts, sheet, id, path);
}

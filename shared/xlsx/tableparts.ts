import { type Block, rangeOf } from "./address";
import { declare, dropPart, edit, put, relate } from "./package";
import { relationsOf, textOf } from "./parts";
import { retagged } from "./retag";
import { scan } from "./scan";
import type { Parts } from "./unzip";
import { type Change, changed, escaped, read } from "./xml";

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

/** How a table looks and what rows it has. */
export interface TableLook {
  readonly headers: number;
  readonly totals: number;
  readonly filter: boolean;
  readonly style: string | undefined;
  readonly rowStripes: boolean;
  readonly columnStripes: boolean;
  readonly firstColumn: boolean;
  readonly lastColumn: boolean;
}

const type = "application/vnd.openxmlformats-officedocument.spreadsheetml.table+xml";
const bit = (is: boolean) => (is ? 1 : 0);

const styleInfo = ({ style, rowStripes, columnStripes, firstColumn, lastColumn }: TableLook): string =>
  `<tableStyleInfo${style ? ` name="${escaped(style)}"` : ""} showFirstColumn="${bit(firstColumn)}" showLastColumn="${bit(lastColumn)}" showRowStripes="${bit(rowStripes)}" showColumnStripes="${bit(columnStripes)}"/>`;

/** A table in a part of its own; its columns have names to be brought to agree with the cells. `taken` are names in small letters. */
export function addTable(parts: Parts, sheet: string, block: Block, look: TableLook, taken: ReadonlySet<string>): void {
  const tables = [...parts.keys()]
    .filter((path) => /(^|\/)tables\/[^/]+\.xml$/.test(path))
    .map((path) => read(textOf(parts, path)).attributes);
  const names = new Set([...taken, ...tables.map(({ displayName = "" }) => displayName.toLowerCase())]);
  let number = 1;
  while (parts.has(`xl/tables/table${number}.xml`) || names.has(`table${number}`)) number++;
  const id = Math.max(0, ...tables.map((one) => Number(one.id))) + 1;
  const path = `xl/tables/table${number}.xml`;
  const ref = rangeOf(block);
  const columns = Array.from({ length: block.right - block.left + 1 }, (_, i) => `<tableColumn id="${i + 1}" name="Column${i + 1}"/>`);
  const filter = look.filter && look.headers ? `<autoFilter ref="${rangeOf({ ...block, bottom: block.bottom - look.totals })}"/>` : "";
  const counts = `${look.headers ? "" : ' headerRowCount="0"'}${look.totals ? ' totalsRowCount="1"' : ' totalsRowShown="0"'}`;
  put(
    parts,
    path,
    `<?xml version="1.0" encoding="UTF-8" standalone="yes"?>\n<table xmlns="http://schemas.openxmlformats.org/spreadsheetml/2006/main" id="${id}" name="Table${number}" displayName="Table${number}" ref="${ref}"${counts}>${filter}<tableColumns count="${columns.length}">${columns.join("")}</tableColumns>${styleInfo(look)}</table>`,
  );
  declare(parts, path, type);
  const relation = relate(parts, sheet, "table", `/${path}`);
  edit(parts, sheet, (xml) => withTablePart(xml, relation));
}

const office = "http://schemas.openxmlformats.org/officeDocument/2006/relationships";

function withTablePart(xml: string, relation: string): string {
  let found: Change | undefined;
  let count = 0;
  scan(xml, {
    close(tag, end) {
      if (tag.local === "tablePart") count++;
      const part = `<${tag.prefix}tablePart r:id="${relation}" xmlns:r="${office}"/>`;
      if (tag.local === "tableParts") {
        const open = retagged(xml, tag, { count: count + 1 }).text;
        const inner = tag.closed ? "" : xml.slice(tag.open, xml.lastIndexOf("</", end - 1));
        found = { start: tag.start, end, text: `${open.replace(/\s*\/>$/, ">")}${inner}${part}</${tag.name}>` };
      } else if (tag.local === "worksheet" && !found) {
        const last = xml.lastIndexOf("</", end - 1);
        const extra = new RegExp(`<${tag.prefix}extLst[\\s>]`).exec(xml.slice(xml.lastIndexOf("sheetData")));
        const place = extra ? xml.lastIndexOf("sheetData") + extra.index : last;
        found = { start: place, end: place, text: `<${tag.prefix}tableParts count="1">${part}</${tag.prefix}tableParts>` };
      }
    },
  });
  return found ? changed(xml, [found]) : xml;
}

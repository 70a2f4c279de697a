import type { WorkbookData } from "@odoo/o-spreadsheet";
import { fixed } from "../../../shared/xlsx/names";
import { relationIn } from "../../../shared/xlsx/parts";
import { retagged } from "../../../shared/xlsx/retag";
import { noted, scan, type Tag } from "../../../shared/xlsx/scan";
import { type Change, changed, escaped } from "../../../shared/xlsx/xml";

/** Names of ranges that were given, changed or taken away. */
export function withNames(xml: string, before: WorkbookData["namedRanges"] = {}, now: WorkbookData["namedRanges"] = {}): string {
  const wanted = new Map(Object.entries(now).filter(([name, range]) => before[name] !== range));
  const gone = new Set(Object.keys(before).filter((name) => now[name] === undefined));
  if (!wanted.size && !gone.size) return xml;
  const changes: Change[] = [];
  let list: (Tag & { end: number }) | undefined;
  let place = 0;
  let prefix = "";
  scan(xml, {
    close(tag, end) {
      if (tag.local === "sheets") [place, prefix] = [end, tag.prefix];
      if (tag.local === "definedNames") list = noted(tag, { end });
      if (tag.local !== "definedName" || tag.attribute("localSheetId") !== undefined) return;
      const name = tag.attribute("name") ?? "";
      if (gone.has(name)) changes.push({ start: tag.start, end, text: "" });
      const range = wanted.get(name);
      if (range === undefined) return;
      wanted.delete(name);
      changes.push({ start: tag.open, end: xml.lastIndexOf("</", end - 1), text: escaped(fixed(range)) });
    },
  });
  const added = [...wanted]
    .map(([name, range]) => `<${prefix}definedName name="${escaped(name)}">${escaped(fixed(range))}</${prefix}definedName>`)
    .join("");
  if (added && list && !list.closed) {
    const end = xml.lastIndexOf("</", list.end - 1);
    changes.push({ start: end, end, text: added });
  } else if (added)
    changes.push({ start: list?.start ?? place, end: list?.end ?? place, text: `<${prefix}definedNames>${added}</${prefix}definedNames>` });
  return changed(xml, changes).replace(/<((?:\w+:)?)definedNames>\s*<\/\1definedNames>/, "");
}

/** Whether sheets are shown at all, by their parts' relations. */
export function withHidden(xml: string, hidden: ReadonlyMap<string, boolean>): string {
  if (!hidden.size) return xml;
  const changes: Change[] = [];
  const shown: boolean[] = [];
  let view: Tag | undefined;
  scan(xml, {
    open(tag) {
      if (tag.local === "workbookView") view ??= tag;
      if (tag.local !== "sheet") return;
      const id = relationIn(xml.slice(tag.start, tag.open));
      const is = hidden.get(id);
      shown.push(!(is ?? /hidden/i.test(tag.attribute("state") ?? "")));
      if (is !== undefined) changes.push(retagged(xml, tag, { state: is ? "hidden" : undefined }));
    },
  });
  // The sheet that a program opens at is one that can be seen.
  if (view && !shown[Number(view.attribute("activeTab") ?? 0)]) changes.push(retagged(xml, view, { activeTab: shown.indexOf(true) }));
  return changed(xml, changes);
}

import { declare, edit, put, relate } from "./package";
import { relationsOf, textOf } from "./parts";
import type { Parts } from "./unzip";

/**
 * Marks on cells whose formula fills as many cells as it needs: programs that know such formulas read them in a part of its own.
 * Reference: MS-XLSX 2.2.4.4 and 2.3.8 (dynamicArrayProperties); ECMA-376-1 18.9. From memory, as Excel writes it; a test compares it with what SheetJS writes.
 */

const type = "application/vnd.openxmlformats-officedocument.spreadsheetml.sheetMetadata+xml";
const dynamic = "http://schemas.microsoft.com/office/spreadsheetml/2017/dynamicarray";
const kind =
  '<metadataType name="XLDAPR" minSupportedVersion="120000" copy="1" pasteAll="1" pasteValues="1" merge="1" splitFirst="1" rowColShift="1" clearFormats="1" clearComments="1" assign="1" coerce="1" cellMeta="1"/>';
const future = `<futureMetadata name="XLDAPR" count="1"><bk><extLst><ext uri="{bdbb8cdc-fa1e-496e-a857-3c3f30c029c3}"><xda:dynamicArrayProperties xmlns:xda="${dynamic}" fDynamic="1" fCollapsed="0"/></ext></extLst></bk></futureMetadata>`;
const record = (place: number) => `<bk><rc t="${place}" v="0"/></bk>`;

const whole = `<?xml version="1.0" encoding="UTF-8" standalone="yes"?>
<metadata xmlns="http://schemas.openxmlformats.org/spreadsheetml/2006/main"><metadataTypes count="1">${kind}</metadataTypes>${future}<cellMetadata count="1">${record(1)}</cellMetadata></metadata>`;

/** The number that a cell's `cm` says for such a formula; the part is added to a file that lacks it. */
export function dynamicMark(parts: Parts, workbook: string): number {
  const path = relationsOf(parts, workbook).find((one) => one.kind === "sheetMetadata")?.path;
  if (!path || !parts.has(path)) {
    const folder = workbook.replace(/[^/]*$/, "");
    put(parts, `${folder}metadata.xml`, whole);
    relate(parts, workbook, "sheetMetadata", "metadata.xml");
    declare(parts, `${folder}metadata.xml`, type);
    return 1;
  }
  const xml = textOf(parts, path);
  const types = [...xml.matchAll(/<metadataType\b[^>]*?\sname="([^"]*)"/g)].map(([, name]) => name);
  const place = types.indexOf("XLDAPR") + 1;
  const cells = /<cellMetadata\b[^>]*>([\s\S]*?)<\/cellMetadata>/.exec(xml)?.[1] ?? "";
  const records = [...cells.matchAll(/<rc\b[^>]*?\st="(\d+)"/g)].map(([, one]) => Number(one));
  if (place && records.includes(place)) return records.indexOf(place) + 1;
  edit(parts, path, (text) => withDynamic(text, place, types.length));
  return records.length + 1;
}

function withDynamic(xml: string, place: number, types: number): string {
  let now = xml;
  if (!place) {
    now = types
      ? now.replace(/<metadataTypes\b[^>]*>/, `<metadataTypes count="${types + 1}">`).replace("</metadataTypes>", `${kind}</metadataTypes>`)
      : now.replace(/<metadata\b[^>]*>/, (open) => `${open}<metadataTypes count="1">${kind}</metadataTypes>`);
    const before = /<(?:cellMetadata|valueMetadata|extLst)\b|<\/metadata>/.exec(now)!.index;
    now = now.slice(0, before) + future + now.slice(before);
  }
  const at = place || types + 1;
  if (!/<cellMetadata\b/.test(now)) {
    const before = /<(?:valueMetadata|extLst)\b|<\/metadata>/.exec(now)!.index;
    return `${now.slice(0, before)}<cellMetadata count="1">${record(at)}</cellMetadata>${now.slice(before)}`;
  }
  return now
    .replace(/(<cellMetadata\b[^>]*?count=")(\d+)/, (_, open, count) => open + (Number(count) + 1))
    .replace("</cellMetadata>", `${record(at)}</cellMetadata>`);
}

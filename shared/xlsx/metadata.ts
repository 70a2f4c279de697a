import type { XmlElement } from "@rgrove/parse-xml";
import { declare, put, relate } from "./package";
import { relationsOf, textOf } from "./parts";
import type { Parts } from "./unzip";
import { childOf, childrenOf, read } from "./xml";

/**
 * What marks a formula that may fill several cells: `cm` of its cell is the number of an entry under cellMetadata that names the
 * type XLDAPR. Reference: MS-XLSX 2.2.4.4 and 2.3.8 (dynamicArrayProperties); ECMA-376-1 18.9. From memory, as Excel writes it.
 */
const type =
  '<metadataType name="XLDAPR" minSupportedVersion="120000" copy="1" pasteAll="1" pasteValues="1" merge="1" splitFirst="1" rowColShift="1" clearFormats="1" clearComments="1" assign="1" coerce="1" cellMeta="1"/>';
const future =
  '<futureMetadata name="XLDAPR" count="1"><bk><extLst><ext uri="{bdbb8cdc-fa1e-496e-a857-3c3f30c029c3}"><xda:dynamicArrayProperties xmlns:xda="http://schemas.microsoft.com/office/spreadsheetml/2017/dynamicarray" fDynamic="1" fCollapsed="0"/></ext></extLst></bk></futureMetadata>';
const main = "http://schemas.openxmlformats.org/spreadsheetml/2006/main";

const whole = `<?xml version="1.0" encoding="UTF-8" standalone="yes"?>\n<metadata xmlns="${main}"><metadataTypes count="1">${type}</metadataTypes>${future}<cellMetadata count="1"><bk><rc t="1" v="0"/></bk></cellMetadata></metadata>`;

/** The number of the first cell mark of that type; 0 where there is none. */
function markIn(root: XmlElement): number {
  const types = childrenOf(childOf(root, "metadataTypes") ?? root, "metadataType");
  const number = String(types.findIndex(({ attributes }) => attributes.name === "XLDAPR") + 1);
  const marks = childrenOf(childOf(root, "cellMetadata") ?? root, "bk");
  return marks.findIndex((mark) => childrenOf(mark, "rc").some(({ attributes }) => attributes.t === number)) + 1;
}

/**
 * The number for `cm` in a workbook, with the part that explains it put in where there is none; undefined where a part is there
 * that speaks of other things only, and stays as it is.
 */
export function dynamicMark(parts: Parts, workbook: string): number | undefined {
  const known = relationsOf(parts, workbook).find(({ kind }) => kind === "sheetMetadata")?.path;
  if (known && parts.has(known)) return markIn(read(textOf(parts, known))) || undefined;
  const path = `${workbook.slice(0, workbook.lastIndexOf("/") + 1)}metadata.xml`;
  if (parts.has(path)) return undefined;
  put(parts, path, whole);
  relate(parts, workbook, "sheetMetadata", "metadata.xml");
  declare(parts, path, "application/vnd.openxmlformats-officedocument.spreadsheetml.sheetMetadata+xml");
  return 1;
}

import type { XmlElement } from "@rgrove/parse-xml";
import type { FileRow } from "../../../shared/xlsx/cells";
import { read } from "../../../shared/xlsx/xml";

/** All of a sheet's part but its rows, of which there may be very many. */
export interface Shell {
  /** Its places are those of the whole part. */
  readonly root: XmlElement;
  /** Without the rows, for a reader that asks for no places. */
  readonly xml: string;
}

export function shellOf(xml: string, rows: readonly FileRow[]): Shell {
  if (!rows.length) return { root: read(xml), xml };
  const [before, after] = [xml.slice(0, rows[0].start), xml.slice(rows.at(-1)!.end)];
  return { root: read(before + " ".repeat(xml.length - before.length - after.length) + after), xml: before + after };
}

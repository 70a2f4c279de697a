import type * as OSpreadsheet from "@odoo/o-spreadsheet";
import type { Parts } from "../shared/xlsx/unzip";
import { encoded } from "../shared/xlsx/xml";
import { quietly } from "./quietly";

const pictureOf = (url: string): Uint8Array => {
  const [head, body = ""] = url.split(",", 2);
  const text = head.endsWith(";base64") ? atob(body) : decodeURIComponent(body);
  return Uint8Array.from(text, (letter) => letter.charCodeAt(0));
};

/** The engine's own file of some data, part by part. */
export async function enginesFile(data: object, { Model }: Pick<typeof OSpreadsheet, "Model">): Promise<Parts> {
  const { files } = await quietly(() => new Model(data)).exportXLSX();
  return new Map(files.map((file) => [file.path, "imageSrc" in file ? pictureOf(file.imageSrc) : encoded(file.content)] as const));
}

/** The part of one of its sheets. */
export const enginesSheet = (number: number): string => `xl/worksheets/sheet${number}.xml`;

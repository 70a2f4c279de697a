import { unzip } from "../shared/xlsx/unzip";
import { zipped } from "../shared/xlsx/zip";
import { type Valued, valuesOnly } from "../src/workbook/sharing/valuesonly";

/** A file with values in place of PORE formulas, and what became of it. */
export function withValues(file: Uint8Array): Valued & { readonly file: Uint8Array } {
  const parts = unzip(file);
  const told = valuesOnly(parts);
  return { ...told, file: zipped(parts) };
}

import { execFileSync } from "node:child_process";
import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";

/** The Open XML SDK's validator: the schemas of ECMA-376 as Office reads them, and rules that no schema can say. Errors of each file by its name. */
export function schemaErrors(files: Readonly<Record<string, Uint8Array>>): Record<string, string[]> {
  const folder = mkdtempSync(join(tmpdir(), "schema-"));
  try {
    const paths = Object.values(files).map((bytes, i) => {
      writeFileSync(join(folder, `${i}.xlsx`), bytes);
      return join(folder, `${i}.xlsx`);
    });
    const command = [join(__dirname, "openxml.mjs"), ...paths];
    const found = JSON.parse(execFileSync(process.execPath, command, { encoding: "utf8", maxBuffer: 1e8 })) as string[][];
    return Object.fromEntries(Object.keys(files).map((name, i) => [name, found[i]]));
  } finally {
    rmSync(folder, { recursive: true });
  }
}

import { mkdirSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import type { System } from "../shared/unit";
import { fresh } from "../src/checklist/list";
import { write } from "../src/checklist/part";
import { template } from "../src/workbook/template";
import { xlsx } from "../src/workbook/xlsx";
import { recalculated } from "./recalculated";

export type EditionName = "live" | "plain";
type Filled = "demo" | "empty";

const checklist = { path: "customXml/item1.xml", xml: write(fresh) };

/** The workbook's file in both editions; they share one calculation. */
async function files(system: System, filled: Filled): Promise<Record<EditionName, Uint8Array>> {
  const made = template(system, filled);
  const cached = recalculated(made);
  const one = (edition: EditionName) => xlsx(made.book, edition === "live" ? made.live() : made.plain, cached, made.paper, [checklist]);
  return { live: await one("live"), plain: await one("plain") };
}

/** Every edition, US and SI, with the demo and empty: eight files. */
export async function buildWorkbooks(outDir: string): Promise<string[]> {
  mkdirSync(outDir, { recursive: true });
  const written: string[] = [];
  for (const system of ["US", "SI"] as const)
    for (const filled of ["demo", "empty"] as const)
      for (const [edition, file] of Object.entries(await files(system, filled))) {
        const name = `porewise-${edition}-${system.toLowerCase()}${filled === "empty" ? "-empty" : ""}.xlsx`;
        writeFileSync(join(outDir, name), file);
        written.push(name);
      }
  return written;
}

if (require.main === module) buildWorkbooks(process.argv[2]).then((names) => console.log(names.join("\n")));

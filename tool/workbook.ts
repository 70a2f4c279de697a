import { mkdirSync, readFileSync, writeFileSync } from "node:fs";
import { dirname, join } from "node:path";
import { parseArgs } from "node:util";
import type { System } from "../shared/unittable";
import { fresh } from "../src/checklist/list";
import { write } from "../src/checklist/part";
import { nameOf } from "../src/workbook/choice";
import { type Template, template } from "../src/workbook/sheets/template";
import { type Pictures, xlsx } from "../src/workbook/xlsx";
import { recalculated } from "./recalculated";

const editions = ["live", "plain"] as const;
type Edition = (typeof editions)[number];
type Filled = "demo" | "empty";

const checklist = { path: "customXml/item1.xml", xml: write(fresh) };

/** The drawings of the sheets, out of assets. */
const picturesOf = ({ book }: Template): Pictures =>
  new Map(
    book.sheets.flatMap(({ pictures }) => pictures).map(({ file }) => [file, readFileSync(join(__dirname, "../assets", file))] as const),
  );

/** The workbook's file in the editions wanted; they share one calculation, which must find every worked example right. */
export async function workbooks(system: System, filled: Filled, wanted: readonly Edition[] = editions): Promise<Map<Edition, Uint8Array>> {
  const made = template(system, filled);
  const cached = recalculated(made);
  const { sheet, row, column } = made.check;
  const said = String(cached.value(sheet, row, column));
  if (!/: (\d+) of \1 agree$/.test(said)) throw new Error(`the workbook's own check fails: ${said}`);
  const files = new Map<Edition, Uint8Array>();
  for (const edition of wanted)
    files.set(
      edition,
      await xlsx(made.book, edition === "live" ? made.live() : made.plain, cached, made.paper, [checklist], picturesOf(made)),
    );
  return files;
}

export const fileName = (edition: Edition, system: System, filled: Filled): string =>
  nameOf({ edition, units: system === "US" ? "us" : "si", empty: filled === "empty" });

/** Both editions, US and SI, with the demo and empty: eight files, by their names. */
export async function buildWorkbooks(outDir: string): Promise<string[]> {
  mkdirSync(outDir, { recursive: true });
  const written: string[] = [];
  for (const system of ["US", "SI"] as const)
    for (const filled of ["demo", "empty"] as const)
      for (const [edition, file] of await workbooks(system, filled)) {
        written.push(fileName(edition, system, filled));
        writeFileSync(join(outDir, fileName(edition, system, filled)), file);
      }
  return written;
}

const usage = "npm run workbook -- live|plain -o file.xlsx [--si] [--empty]";

/** `npm run workbook`: one file, as it is wanted. */
async function command(): Promise<void> {
  const { values, positionals } = parseArgs({
    allowPositionals: true,
    options: { out: { type: "string", short: "o" }, si: { type: "boolean" }, empty: { type: "boolean" } },
  });
  const edition = editions.find((name) => name === positionals[0]);
  if (!edition || positionals.length > 1 || !values.out) throw new Error(usage);
  const files = await workbooks(values.si ? "SI" : "US", values.empty ? "empty" : "demo", [edition]);
  mkdirSync(dirname(values.out), { recursive: true });
  writeFileSync(values.out, files.get(edition)!);
  console.log(`${values.out} holds the ${edition} workbook.`);
}

if (require.main === module)
  command().catch((error: unknown) => {
    console.error(error instanceof Error ? error.message : error);
    process.exit(2);
  });

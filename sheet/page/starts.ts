import { folder, nameOf } from "../../src/workbook/choice";
import { fetched } from "../../taskpane/inside";
import { contentOf, readFile } from "./files";
import { blank } from "./first";
import type { Content } from "./kept/work";

/** What a new workbook may start from: a file of the template, or nothing. */
export interface Start {
  readonly file: string;
  readonly words: string;
  readonly name: string;
}

export const starts: readonly Start[] = [
  ...(["us", "si"] as const).flatMap((units) =>
    [false, true].map((empty) => ({
      file: nameOf({ edition: "live", units, empty }),
      words: `${units.toUpperCase()} units, ${empty ? "empty" : "filled with an invented shop"}`,
      name: empty ? "My workbook" : "Invented shop",
    })),
  ),
  { file: "", words: "blank: one empty sheet", name: "Blank workbook" },
];

/** What such a workbook holds, or why it cannot be had. */
export async function startContent({ file }: Start): Promise<Content | string> {
  if (!file) return blank();
  const answer = await fetched(`${folder}/${file}`).catch(() => undefined);
  if (!answer?.ok) return `The file ${file} cannot be loaded right now. Try again when you are connected.`;
  const read = await readFile(new Uint8Array(await answer.arrayBuffer()), file);
  return typeof read === "string" ? read : contentOf(read);
}

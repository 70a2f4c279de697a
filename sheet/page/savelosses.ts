import { NotWhole } from "../../shared/xlsx/integrity";
import { Unreadable } from "../../shared/xlsx/unzip";
import { lossesOf } from "../file/save";
import type { Content } from "./kept/work";

/** What the workbook's file would lose by saving, in words; "" where nothing. */
export function costOf(content: Content): string {
  const { because, lost } = lossesOf(content.book, content);
  if (!lost.length) return "";
  return [
    `The file that you opened cannot hold what was made on this page: ${because.join("; ")}. A new file is made instead, without: ${lost.join("; ")}.`,
    "The file as you opened it stays in this browser: the button with the workbook's name at the top, then Earlier versions.",
  ].join("\n\n");
}

/** Why something failed, for a person. */
export function causeOf(error: unknown): string {
  if (error instanceof NotWhole) return `what was written is not a whole workbook (${error.message})`;
  if (error instanceof Unreadable) return error.message;
  return error instanceof Error ? error.message : String(error);
}

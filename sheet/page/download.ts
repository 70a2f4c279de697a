import { saveFile, workbookType } from "../../taskpane/save";
import { saved } from "../file/save";
import type { Content } from "./kept/work";
import { engine } from "./vendor";

/** A workbook as a file, whether it is on the page or not. */
export const fileOf = (content: Content): Promise<Uint8Array> => saved(new engine.Model(content.book), content, engine);

/** A name that every disk takes. */
export const fileName = (name: string, ending = "xlsx"): string =>
  `${name.replace(/[\\/:*?"<>|]/g, "-").replace(/^\.+|[. ]+$/g, "") || "workbook"}.${ending}`;

export const downloadWorkbook = (name: string, bytes: Uint8Array): void => saveFile(fileName(name), bytes as BlobPart, workbookType);

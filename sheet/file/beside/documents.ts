import { addDocuments, type Documents, documentsOf } from "../../../shared/xlsx/documents";
import type { Piece } from "./piece";

export const documents: Piece<Documents> = {
  name: "documents",
  read: ({ workbook }) => documentsOf(workbook.parts, workbook.path),
  write: ({ parts, path }, kept = {}) => addDocuments(parts, path, kept),
  // Of two of one kind the workbook's own stays.
  joined: (own, from) => ({ ...from, ...own }),
};

import { mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { convert } from "./libreoffice";

const spaces = ["office", "table", "text"].map((name) => `xmlns:${name}="urn:oasis:names:tc:opendocument:xmlns:${name}:1.0"`).join(" ");
const formulas = 'xmlns:of="urn:oasis:names:tc:opendocument:xmlns:of:1.2"';

type Content = string | number | undefined;

function cellXml(content: Content): string {
  if (content === undefined) return "<table:table-cell/>";
  if (typeof content === "number") return `<table:table-cell office:value-type="float" office:value="${content}"/>`;
  const text = content.replace(/&/g, "&amp;").replace(/</g, "&lt;").replace(/"/g, "&quot;");
  return content.startsWith("of:=")
    ? `<table:table-cell table:formula="${text}"/>`
    : `<table:table-cell office:value-type="string"><text:p>${text}</text:p></table:table-cell>`;
}

const sheetXml = ([name, rows]: readonly [string, readonly (readonly Content[])[]]) =>
  `<table:table table:name="${name}">${rows.map((cells) => `<table:table-row>${cells.map(cellXml).join("")}</table:table-row>`).join("")}</table:table>`;

/** A workbook that LibreOffice made, from sheets of typed values and of formulas in its own spelling. */
export function madeByLibreOffice(sheets: Readonly<Record<string, readonly (readonly Content[])[]>>, names = ""): Uint8Array {
  const folder = mkdtempSync(join(tmpdir(), "costs-"));
  try {
    const flat = join(folder, "book.fods");
    writeFileSync(
      flat,
      `<?xml version="1.0" encoding="UTF-8"?><office:document ${spaces} ${formulas} office:version="1.2" office:mimetype="application/vnd.oasis.opendocument.spreadsheet"><office:body><office:spreadsheet>${Object.entries(sheets).map(sheetXml).join("")}${names ? `<table:named-expressions>${names}</table:named-expressions>` : ""}</office:spreadsheet></office:body></office:document>`,
    );
    return readFileSync(convert(flat, "xlsx", folder));
  } finally {
    rmSync(folder, { recursive: true });
  }
}

/** A shop's own sheet for a batch of pen blanks: headings, gaps and totals where it likes them. */
export const costs = (): Uint8Array =>
  madeByLibreOffice(
    {
      Rates: [["what we pay", "each"], ["resin, a quart", 31.5], ["foil, a roll", 4.25], ["dye, a jar", 12], [], ["margin", 0.45]],
      "June batch": [
        ["June batch of maple blanks, 3/4 in"],
        [],
        ["used", "how much", "each", "line", "remark"],
        ["resin", 2.5, "of:=[$Rates.B2]", "of:=[.B4]*[.C4]", "3/4"],
        [],
        ["foil", 3, "of:=[$Rates.B3]", "of:=[.B6]*[.C6]"],
        ["dye", 0.25, "of:=[$Rates.B4]", "of:=[.B7]*[.C7]"],
        [undefined, undefined, "sum", "of:=SUM([.D4:.D7])"],
        [],
        ["pieces", 40],
        ["spoiled", 3],
        ["cost of the run"],
        ["cost of a good piece"],
        ["price"],
        ["two of them", "of:=2*[.B14]"],
      ],
    },
    '<table:named-range table:name="margin" table:base-cell-address="$Rates.$B$6" table:cell-range-address="$Rates.$B$6"/>',
  );

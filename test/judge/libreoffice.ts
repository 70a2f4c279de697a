import { execFileSync } from "node:child_process";
import { existsSync, mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { basename, extname, join } from "node:path";
import { strFromU8, strToU8, unzipSync, zipSync } from "fflate";
import { findProgram } from "../../tool/programs";

/** A second spreadsheet program as the judge. It keeps stale cached values unless its profile says to recalculate. */
const profile = `<?xml version="1.0" encoding="UTF-8"?>
<oor:items xmlns:oor="http://openoffice.org/2001/registry" xmlns:xs="http://www.w3.org/2001/XMLSchema">
<item oor:path="/org.openoffice.Office.Calc/Formula/Load"><prop oor:name="OOXMLRecalcMode" oor:op="fuse"><value>0</value></prop></item>
</oor:items>`;

const program = findProgram("spreadsheet");

/** Opens files, recalculates them unless they keep their values, and saves them in another format into a folder; answers the new files' paths. */
export function convertAll(files: readonly string[], format: string, out: string, keepsValues = false): string[] {
  if (!program) throw new Error("LibreOffice is not installed");
  const home = mkdtempSync(join(tmpdir(), "judge-"));
  try {
    mkdirSync(join(home, "user"));
    if (!keepsValues) writeFileSync(join(home, "user", "registrymodifications.xcu"), profile);
    execFileSync(program, [`-env:UserInstallation=file://${home}`, "--headless", "--convert-to", format, "--outdir", out, ...files], {
      stdio: ["ignore", "ignore", "pipe"],
      timeout: 180_000,
    });
  } finally {
    rmSync(home, { recursive: true, force: true });
  }
  return files.map((file) => {
    const made = join(out, `${basename(file, extname(file))}.${format.split(":")[0]}`);
    if (!existsSync(made)) throw new Error(`LibreOffice did not write ${made}`);
    return made;
  });
}

/** Opens a file, recalculates it and saves it in another format into a folder; answers the new file's path. */
export const convert = (file: string, format: string, out: string, keepsValues = false): string =>
  convertAll([file], format, out, keepsValues)[0];

const escaped = (text: string) => text.replace(/&/g, "&amp;").replace(/</g, "&lt;").replace(/>/g, "&gt;");
const main = "http://schemas.openxmlformats.org/spreadsheetml/2006/main";
const relations = "http://schemas.openxmlformats.org/officeDocument/2006/relationships";
const packages = "http://schemas.openxmlformats.org/package/2006";

/** The least workbook that holds formulas down column A. */
function workbookOf(formulas: readonly string[]): Uint8Array {
  const rows = formulas.map((formula, i) => `<row r="${i + 1}"><c r="A${i + 1}"><f>${escaped(formula)}</f></c></row>`).join("");
  const parts = {
    "[Content_Types].xml": `<Types xmlns="${packages}/content-types"><Default Extension="rels" ContentType="application/vnd.openxmlformats-package.relationships+xml"/><Default Extension="xml" ContentType="application/xml"/><Override PartName="/xl/workbook.xml" ContentType="application/vnd.openxmlformats-officedocument.spreadsheetml.sheet.main+xml"/><Override PartName="/xl/worksheets/sheet1.xml" ContentType="application/vnd.openxmlformats-officedocument.spreadsheetml.worksheet+xml"/></Types>`,
    "_rels/.rels": `<Relationships xmlns="${packages}/relationships"><Relationship Id="r1" Type="${relations}/officeDocument" Target="xl/workbook.xml"/></Relationships>`,
    "xl/workbook.xml": `<workbook xmlns="${main}" xmlns:r="${relations}"><sheets><sheet name="A" sheetId="1" r:id="r1"/></sheets></workbook>`,
    "xl/_rels/workbook.xml.rels": `<Relationships xmlns="${packages}/relationships"><Relationship Id="r1" Type="${relations}/worksheet" Target="worksheets/sheet1.xml"/></Relationships>`,
    "xl/worksheets/sheet1.xml": `<worksheet xmlns="${main}"><sheetData>${rows}</sheetData></worksheet>`,
  };
  return zipSync(Object.fromEntries(Object.entries(parts).map(([name, text]) => [name, strToU8(text)])));
}

/** What LibreOffice makes of formulas: a number, or the text or error it shows. */
export function calculated(formulas: readonly string[]): (number | string)[] {
  const folder = mkdtempSync(join(tmpdir(), "formulas-"));
  try {
    const file = join(folder, "in.xlsx");
    writeFileSync(file, workbookOf(formulas));
    const out = join(folder, "out");
    mkdirSync(out);
    const sheet = strFromU8(unzipSync(readFileSync(convert(file, "xlsx", out)))["xl/worksheets/sheet1.xml"]);
    const cells = new Map(
      [...sheet.matchAll(/<c r="A(\d+)"([^>]*)>(.*?)<\/c>/gs)].map(([, row, attributes, body]) => [Number(row), { attributes, body }]),
    );
    return formulas.map((_, i) => {
      const cell = cells.get(i + 1);
      const value = cell && /<v>(.*?)<\/v>/s.exec(cell.body)?.[1];
      if (value === undefined) return "";
      return /t="(e|str|s)"/.test(cell!.attributes) ? value : Number(value);
    });
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

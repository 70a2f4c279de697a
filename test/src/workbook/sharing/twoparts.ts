import { strFromU8, strToU8, unzipSync, zipSync } from "fflate";

/** A sheet in a form that other programs write. */
export const sheetOf = (rows: string, after = "") =>
  `<worksheet xmlns="http://schemas.openxmlformats.org/spreadsheetml/2006/main" xmlns:r="r" xmlns:x14="x14" xmlns:xm="xm"><sheetData>${rows}</sheetData>${after}</worksheet>`;

export const toSheet = '<Relationship Id="b" Type="t/worksheet" Target="worksheets/sheet1.xml"/>';

export const parts = {
  "[Content_Types].xml":
    '<Types><Override PartName="/xl/calcChain.xml" ContentType="c"/><Override PartName="/xl/charts/chart1.xml" ContentType="x"/><Override PartName="/xl/worksheets/sheet1.xml" ContentType="s"/></Types>',
  "_rels/.rels": '<Relationships><Relationship Id="w" Type="t/officeDocument" Target="xl/workbook.xml"/></Relationships>',
  "xl/workbook.xml": "<workbook/>",
  "xl/_rels/workbook.xml.rels": `<Relationships><Relationship Id="a" Type="t/calcChain" Target="calcChain.xml"/>${toSheet}</Relationships>`,
  "xl/calcChain.xml": "<calcChain/>",
  "xl/worksheets/sheet1.xml": sheetOf(
    '<row r="1"><c r="A1"><v>2</v></c><c r="B1" cm="1" s="3"><f t="array" ref="B1:B2">_xldudf_PORE_DYE(A1:A2)</f><v>0.5</v></c><c r="C1"><f>SUM(A1)</f><v>2</v></c><c r="D1" t="str"><f>pore.spoons(B1)</f><v>1/2 tsp</v></c></row><row r="2"><c r="B2"><v>0.25</v></c></row>',
    '<drawing r:id="x"/><legacyDrawing r:id="y"/><tableParts count="1"/>',
  ),
  "xl/worksheets/_rels/sheet1.xml.rels":
    '<Relationships><Relationship Id="x" Target="../drawings/drawing1.xml"/><Relationship Id="y" Target="/xl/drawings/vml1.vml"/><Relationship Id="t" Type="t/table" Target="../tables/table1.xml"/></Relationships>',
  "xl/drawings/drawing1.xml": "<d/>",
  "xl/drawings/vml1.vml": "<v/>",
  "xl/charts/chart1.xml": "<c/>",
  "xl/tables/table1.xml": "<t/>",
};
export const file = zipSync(Object.fromEntries(Object.entries(parts).map(([name, text]) => [name, strToU8(text)])));
export const read = (made: Uint8Array) =>
  Object.fromEntries(Object.entries(unzipSync(made)).map(([name, data]) => [name, strFromU8(data)]));

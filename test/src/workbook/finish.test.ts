import { strFromU8, strToU8, unzipSync, zipSync } from "fflate";
import { finished } from "../../../src/workbook/finish";

const zipped = (parts: Record<string, string>) =>
  zipSync(Object.fromEntries(Object.entries(parts).map(([path, text]) => [path, strToU8(text)])));

const made = () =>
  unzipSync(
    finished(
      zipped({
        "xl/workbook.xml":
          '<workbook><definedNames><definedName name="_xlnm.Print_Titles" localSheetId="1">My Shop!$4:$4</definedName><definedName name="_xlnm.Print_Area" localSheetId="2">Woods!$A$1:$B$2</definedName></definedNames><calcPr calcId="0" fullCalcOnLoad="1"/></workbook>',
        "docProps/app.xml": "<Properties><Application>a library</Application></Properties>",
        "docProps/core.xml": "<cp><dc:title>T</dc:title><dc:creator>somebody</dc:creator></cp>",
        "xl/styles.xml":
          '<fonts><font><b/><color rgb="FF000000"/><sz val="20"/><name val="A"/></font><font><color rgb="FF111111"/></font><font><sz val="8"/></font></fonts>',
        "xl/_rels/workbook.xml.rels": "<Relationships></Relationships>",
        "xl/worksheets/sheet1.xml":
          '<worksheet><sheetData><row r="1"><c r="A1" s="2" t="str"><f>X()</f><v>#VALUE!</v></c><c r="A2" t="str"><f>X()</f><v>words</v></c></row></sheetData><conditionalFormatting sqref="A1:A2"><cfRule type="expression"><formula>1</formula></cfRule><cfRule type="expression"><formula>2</formula></cfRule></conditionalFormatting></worksheet>',
      }),
      [{ path: "customXml/item1.xml", xml: "<list/>" }],
    ),
  );
const part = (path: string) => strFromU8(made()[path]);

it("asks no program to calculate on opening", () => expect(part("xl/workbook.xml")).toContain('<calcPr calcId="191029"/>'));

it("names no writer", () => {
  expect(part("docProps/app.xml")).toBe("<Properties></Properties>");
  expect(part("docProps/core.xml")).toBe("<cp><dc:title>T</dc:title></cp>");
});

it("writes a font's size before its colour, each in its own font", () =>
  expect(part("xl/styles.xml")).toBe(
    '<fonts><font><b/><sz val="20"/><color rgb="FF000000"/><name val="A"/></font><font><color rgb="FF111111"/></font><font><sz val="8"/></font></fonts>',
  ));

it("puts quotes around sheet names of several words", () => {
  expect(part("xl/workbook.xml")).toContain(">'My Shop'!$4:$4<");
  expect(part("xl/workbook.xml")).toContain(">Woods!$A$1:$B$2<");
});

it("types an error as an error and words as words", () => {
  expect(part("xl/worksheets/sheet1.xml")).toContain('<c r="A1" s="2" t="e"><f>X()</f><v>#VALUE!</v>');
  expect(part("xl/worksheets/sheet1.xml")).toContain('<c r="A2" t="str">');
});

it("gives every rule a block of its own", () =>
  expect(part("xl/worksheets/sheet1.xml").match(/<conditionalFormatting sqref="A1:A2"><cfRule/g)).toHaveLength(2));

it("carries another part along", () => {
  expect(part("customXml/item1.xml")).toBe("<list/>");
  expect(part("xl/_rels/workbook.xml.rels")).toContain('Target="../customXml/item1.xml"');
});

import { strToU8 } from "fflate";
import { addDocuments, documentsOf } from "../../../shared/xlsx/documents";
import type { Parts } from "../../../shared/xlsx/unzip";

const relation = (target: string) =>
  `<Relationship Id="r1" Type="http://schemas.openxmlformats.org/officeDocument/2006/relationships/customXml" Target="${target}"/>`;
const relations = (inner: string) =>
  `<Relationships xmlns="http://schemas.openxmlformats.org/package/2006/relationships">${inner}</Relationships>`;
const types = '<Types xmlns="http://schemas.openxmlformats.org/package/2006/content-types"></Types>';

it("puts a document beside those that stand in the file, and over none of them", () => {
  const parts: Parts = new Map(
    Object.entries({
      "[Content_Types].xml": types,
      "xl/workbook.xml": "<workbook/>",
      "xl/_rels/workbook.xml.rels": relations(relation("../customXml/item1.xml")),
      "customXml/item1.xml": '<theirs xmlns="urn:theirs"/>',
      "customXml/itemProps2.xml": "<props/>",
    }).map(([path, text]) => [path, strToU8(text)]),
  );
  addDocuments(parts, "xl/workbook.xml", { "urn:ours": '<ours xmlns="urn:ours"/>', "urn:too": '<too xmlns="urn:too"/>' });
  expect(documentsOf(parts, "xl/workbook.xml")).toEqual({
    "urn:theirs": '<theirs xmlns="urn:theirs"/>',
    "urn:ours": '<ours xmlns="urn:ours"/>',
    "urn:too": '<too xmlns="urn:too"/>',
  });
  expect(new TextDecoder().decode(parts.get("customXml/itemProps2.xml"))).toBe("<props/>");
});

import { f, row, workbookOf } from "./workbooks";

const main = "http://schemas.openxmlformats.org/spreadsheetml/2006/main";
const office = "http://schemas.openxmlformats.org/officeDocument/2006/relationships";
const drawn = "http://schemas.openxmlformats.org/drawingml/2006";
const packaged = "http://schemas.openxmlformats.org/package/2006/relationships";
const types = "application/vnd.openxmlformats-officedocument";

const relations = (list: Readonly<Record<string, readonly [kind: string, target: string]>>) =>
  `<Relationships xmlns="${packaged}">${Object.entries(list)
    .map(([id, [kind, target]]) => `<Relationship Id="${id}" Type="${office}/${kind}" Target="${target}"/>`)
    .join("")}</Relationships>`;

const words = (address: string, text: string) => `<c r="${address}" t="inlineStr"><is><t>${text}</t></is></c>`;
const number = (address: string, value: number) => `<c r="${address}"><v>${value}</v></c>`;

const orders = [
  row(1, words("A1", "Orders"), f("B1", "SUM(Orders[cost])", "<v>60</v>"), f("C1", "SUM(B:B)-SUM(3:3)", "<v>1</v>")),
  row(3, words("A3", "wood"), words("B3", "cost"), words("C3", "twice")),
  ...[4, 5, 6, 7].map((n) =>
    row(n, words(`A${n}`, `w${n}`), number(`B${n}`, n * 10), f(`C${n}`, "Orders[[#This Row],[cost]]*2", `<v>${n * 20}</v>`)),
  ),
  row(8, words("A8", "Total"), f("B8", "SUBTOTAL(109,Orders[cost])", "<v>220</v>"), f("C8", "SUBTOTAL(103,Orders[twice])", "<v>4</v>")),
  row(10, '<c r="A10"><f t="shared" ref="A10:A12" si="0">B4*$B$5+Stock!A1</f><v>1</v></c>', number("B10", 1)),
  row(11, '<c r="A11"><f t="shared" si="0"/><v>1</v></c>', number("B11", 2)),
  row(12, '<c r="A12"><f t="shared" si="0"/><v>1</v></c>', '<c r="B12"><f t="array" ref="B12:B13">B10:B11*2</f><v>2</v></c>'),
  row(13, number("B13", 4)),
];

const around = [
  '<autoFilter ref="E3:F8"/>',
  '<mergeCells count="2"><mergeCell ref="A15:C16"/><mergeCell ref="E1:F1"/></mergeCells>',
  '<conditionalFormatting sqref="B4:B7 E4:E8"><cfRule type="expression" priority="1"><formula>$B4&gt;Stock!$A$2</formula></cfRule></conditionalFormatting>',
  '<dataValidations count="1"><dataValidation type="list" sqref="A4:A7"><formula1>Stock!$A$1:$A$6</formula1></dataValidation></dataValidations>',
  '<hyperlinks><hyperlink ref="A1" location="Stock!A3" display="Orders"/></hyperlinks>',
  '<pageMargins left="0.7" right="0.7" top="0.75" bottom="0.75" header="0.3" footer="0.3"/>',
  '<rowBreaks count="1" manualBreakCount="1"><brk id="8" max="16383" man="1"/></rowBreaks>',
  '<drawing r:id="d1"/><tableParts count="1"><tablePart r:id="t1"/></tableParts>',
].join("");

const axis = (kind: string, id: number, other: number, place: string) =>
  `<c:${kind}><c:axId val="${id}"/><c:scaling><c:orientation val="minMax"/></c:scaling><c:delete val="0"/><c:axPos val="${place}"/><c:crossAx val="${other}"/></c:${kind}>`;

/** A workbook with a table, its totals, filled and array formulas, rules, a list, a link, a filter, merged cells, a chart, groups and names. */
export const rich = workbookOf({
  sheets: {
    Orders: `${orders.join("")}|${around}`,
    Stock: Array.from({ length: 6 }, (_, i) => row(i + 1, number(`A${i + 1}`, i + 1), f(`B${i + 1}`, `Orders!B${i + 4}+A${i + 1}`))).join(
      "",
    ),
    Last: row(1, f("A1", "SUM(Orders!B4:B7)+Stock!A2+Part", "<v>1</v>")) + row(2, f("A2", "COUNT(Stock!A:A)", "<v>6</v>")),
  },
  names:
    '<definedName name="_xlnm._FilterDatabase" localSheetId="0" hidden="1">Orders!$E$3:$F$8</definedName><definedName name="_xlnm.Print_Area" localSheetId="0">Orders!$A$1:$C$16</definedName><definedName name="Own" localSheetId="1">Stock!$A$2</definedName><definedName name="Part">Stock!$A$3</definedName>',
  parts: {
    "xl/worksheets/_rels/sheet1.xml.rels": relations({
      d1: ["drawing", "../drawings/drawing1.xml"],
      t1: ["table", "../tables/table1.xml"],
    }),
    "xl/tables/table1.xml": `<table xmlns="${main}" id="1" name="Orders" displayName="Orders" ref="A3:C8" totalsRowCount="1"><autoFilter ref="A3:C7"/><tableColumns count="3"><tableColumn id="1" name="wood" totalsRowLabel="Total"/><tableColumn id="2" name="cost" totalsRowFunction="sum"/><tableColumn id="3" name="twice" totalsRowFunction="count"><calculatedColumnFormula>Orders[[#This Row],[cost]]*2</calculatedColumnFormula></tableColumn></tableColumns><tableStyleInfo name="TableStyleMedium2" showRowStripes="1"/></table>`,
    "xl/drawings/drawing1.xml": `<xdr:wsDr xmlns:xdr="${drawn}/spreadsheetDrawing" xmlns:a="${drawn}/main" xmlns:r="${office}"><xdr:twoCellAnchor><xdr:from><xdr:col>4</xdr:col><xdr:colOff>0</xdr:colOff><xdr:row>9</xdr:row><xdr:rowOff>0</xdr:rowOff></xdr:from><xdr:to><xdr:col>8</xdr:col><xdr:colOff>0</xdr:colOff><xdr:row>16</xdr:row><xdr:rowOff>0</xdr:rowOff></xdr:to><xdr:graphicFrame macro=""><xdr:nvGraphicFramePr><xdr:cNvPr id="2" name="Chart 1"/><xdr:cNvGraphicFramePr/></xdr:nvGraphicFramePr><xdr:xfrm><a:off x="0" y="0"/><a:ext cx="0" cy="0"/></xdr:xfrm><a:graphic><a:graphicData uri="${drawn}/chart"><c:chart xmlns:c="${drawn}/chart" r:id="c1"/></a:graphicData></a:graphic></xdr:graphicFrame><xdr:clientData/></xdr:twoCellAnchor></xdr:wsDr>`,
    "xl/drawings/_rels/drawing1.xml.rels": relations({ c1: ["chart", "../charts/chart1.xml"] }),
    "xl/charts/chart1.xml": `<c:chartSpace xmlns:c="${drawn}/chart" xmlns:a="${drawn}/main"><c:chart><c:plotArea><c:layout/><c:barChart><c:barDir val="col"/><c:grouping val="clustered"/><c:varyColors val="0"/><c:ser><c:idx val="0"/><c:order val="0"/><c:tx><c:strRef><c:f>Orders!$B$3</c:f></c:strRef></c:tx><c:val><c:numRef><c:f>Orders!$B$4:$B$7</c:f></c:numRef></c:val></c:ser><c:axId val="1"/><c:axId val="2"/></c:barChart>${axis("catAx", 1, 2, "b")}${axis("valAx", 2, 1, "l")}</c:plotArea><c:plotVisOnly val="1"/></c:chart></c:chartSpace>`,
  },
  types: {
    "xl/tables/table1.xml": `${types}.spreadsheetml.table+xml`,
    "xl/drawings/drawing1.xml": `${types}.drawing+xml`,
    "xl/charts/chart1.xml": `${types}.drawingml.chart+xml`,
  },
});

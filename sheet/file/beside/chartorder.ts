import { XmlElement, XmlText } from "@rgrove/parse-xml";
import { escaped, nameOf, read } from "../../../shared/xlsx/xml";

/** The engine's charts in the order that the standard gives the elements of a chart: programs call another damaged. */

const chart =
  "barDir grouping scatterStyle radarStyle varyColors ser dLbls gapWidth overlap serLines marker smooth firstSliceAng holeSize axId";
const axis =
  "axId scaling delete axPos majorGridlines minorGridlines title numFmt majorTickMark minorTickMark tickLblPos spPr txPr crossAx crosses crossesAt auto lblAlgn lblOffset noMultiLvlLbl crossBetween majorUnit minorUnit";

const orders: Readonly<Record<string, string>> = {
  chartSpace: "date1904 lang roundedCorners style chart spPr txPr printSettings",
  chart: "title autoTitleDeleted view3D plotArea legend plotVisOnly dispBlanksAs",
  title: "tx layout overlay spPr txPr",
  plotArea: "layout barChart lineChart pieChart doughnutChart scatterChart radarChart catAx valAx dTable spPr",
  ...Object.fromEntries(["bar", "line", "pie", "doughnut", "scatter", "radar"].map((kind) => [`${kind}Chart`, chart])),
  ser: "idx order tx spPr invertIfNegative marker explosion dPt dLbls trendline errBars cat xVal val yVal shape smooth",
  dPt: "idx invertIfNegative marker bubble3D explosion spPr",
  dLbls: "dLbl numFmt spPr txPr dLblPos showLegendKey showVal showCatName showSerName showPercent showBubbleSize separator showLeaderLines",
  marker: "symbol size spPr",
  trendline: "name spPr trendlineType order period forward backward intercept dispRSqr dispEq",
  scaling: "logBase orientation max min",
  legend: "legendPos legendEntry layout overlay spPr txPr",
  catAx: axis,
  valAx: axis,
};

/** What the engine says of an axis or a series that is for one of another kind. */
const misplaced: Readonly<Record<string, string>> = { valAx: "auto", catAx: "crossBetween", radarChart: "smooth" };

function written(element: XmlElement, within = ""): string {
  const name = nameOf(element);
  const order = orders[name]?.split(" ");
  const place = (child: XmlElement) => {
    const at = order?.indexOf(nameOf(child)) ?? 0;
    return at < 0 ? order!.length : at;
  };
  const elements = element.children.filter((child): child is XmlElement => child instanceof XmlElement);
  const children = elements.filter((child) => ![misplaced[name], misplaced[within]].includes(nameOf(child)));
  if (order) children.sort((a, b) => place(a) - place(b));
  const text = elements.length ? "" : element.children.map((child) => (child instanceof XmlText ? escaped(child.text) : "")).join("");
  const attributes = Object.entries(element.attributes).map(([attribute, value]) => ` ${attribute}="${escaped(value)}"`);
  return `<${element.name}${attributes.join("")}>${children.map((child) => written(child, name)).join("")}${text}</${element.name}>`;
}

/** To the engine a pie is a ring without a hole; files have another name for it. */
const named = (xml: string): string =>
  /<c:holeSize val="0"/.test(xml) ? xml.replace(/<c:holeSize[^>]*\/>/, "").replace(/c:doughnutChart/g, "c:pieChart") : xml;

export const orderedChart = (xml: string): string => written(read(named(xml)));

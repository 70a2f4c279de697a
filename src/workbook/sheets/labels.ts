import { tubCare } from "../../labels/labellines";
import { commonSizes } from "../../labels/sizes";
import { type Formula, formula } from "../formula";
import type { Kit } from "../kit";
import { Page } from "../page";
import { cellIn, type Ref, refTo, whole } from "../place";
import { dayIn } from "../usdates";
import type { Blanks } from "./blanks";
import { day } from "./day";
import type { ResinBook } from "./resinbook";
import type { Shop } from "./shop";

/** Heights of the lines of one label, as shares of it: the last holds two lines of small print in any font. */
const shares = [0.22, 0.175, 0.175, 0.43];
const lines = shares.length;
/** The first of them are for tubs. */
const tubs = 3;

/** Points in an inch, and in a millimeter. */
const points = { US: 72, SI: 72 / 25.4 };
const toldSizes = { US: "2 5/8 by 1 in, 3 across and 10 down, on Letter", SI: "70 by 37 mm, 3 across and 8 down, on A4" };

/** A column so many points wide, in characters: a character is 7 pixels, and 5 stand around them. No wider than asked: the last column must stay on the paper. */
const characters = (points: number): number => (Math.floor((points * 96) / 72 + 1e-6) - 5) / 7;

const shown = (cell: Ref, format: string): Formula => formula`IF(ISNUMBER(${cell}),TEXT(${cell},"${format}"),"________")`;

/** What a tub says: what, color, dye rate, when mixed, until when, and what never to forget. */
const tubLines = (kit: Kit, shop: Shop, { since, until }: ResinBook, color: Ref): Formula[] => [
  formula`"Mixed resin, "&IF(LEN(${color})>0,${color},"clear")`,
  formula`"mixed "&${shown(since, dayIn(kit.system))}&", use by "&${shown(until, dayIn(kit.system))}`,
  formula`"dye "&${shown(shop.holds("resin dye rate"), "0.00")}&" ${kit.unit("strength")}"`,
  formula`"${tubCare}"`,
];

/** What a piece says: number or kind, wood, dry weight, color, day. */
function pieceLines(kit: Kit, shop: Shop, { of }: Blanks, upTo: Ref, piece: Formula, date: Ref): Formula[] {
  // The rows whose pieces are all labeled before this one.
  const passed = formula`COUNTIF(${whole(upTo)},"<"&${piece})`;
  const at = (column: Ref) => formula`INDEX(${whole(column)},${passed}+1)`;
  const said = (text: Formula) => formula`IF(${piece}<=MAX(${whole(upTo)}),${text},"")`;
  const [weight, count] = [at(of.dryWeight), at(of.count)];
  const number = formula`${piece}-IF(${passed}=0,0,INDEX(${whole(upTo)},MAX(1,${passed})))`;
  return [
    said(formula`${at(of.kind)}&IF(SUM(${count})>1,", "&(${number})&" of "&${count},"")`),
    said(formula`${at(of.wood)}&""`),
    said(formula`IF(ISNUMBER(${weight}),"oven-dry "&TEXT(${weight},"0.0")&" "&${shop.holds("scale reads")},"oven-dry ________")`),
    said(formula`IF(LEN(${at(of.color)})>0,${at(of.color)}&", ","")&${shown(date, dayIn(kit.system))}`),
  ];
}

/** Running count of pieces down Blanks; a row without a count is one piece, and a row left out of the plan has none. */
function upToRows(page: Page, { of }: Blanks, column: number): Ref {
  for (let row = 0; row < of.kind.rows; row++) {
    const [kind, count, inPlan] = [of.kind, of.count, of.inPlan].map((ref) => cellIn(ref, row));
    const before = row ? formula`${refTo(page.sheet.name, page.row + row - 1, column)}` : formula`0`;
    page.put(page.row + row, column, {
      formula: formula`${before}+IF(OR(${kind}="",LEFT(${inPlan},4)="left"),0,IF(ISNUMBER(${count}),MAX(0,INT(${count})),1))`,
      look: "note",
    });
  }
  return refTo(page.sheet.name, page.row, column, of.kind.rows);
}

/** What the books still lack, and which pieces have no label. */
function stateOf({ of, leftOut }: Blanks, { now }: ResinBook): Formula {
  const noPieces = formula`IF(COUNTIF(${whole(of.kind)},"?*")=0,"Blanks has no pieces yet: type them there first. ","")`;
  const noResin = formula`IF(SUM(${now})>0,"","The Resin Book has no resin: fill it first, or write its days on the label by hand. ")`;
  const out = formula`IF(${leftOut.rows}=0,"",${leftOut.pieces}&IF(${leftOut.pieces}=1," piece"," pieces")&" in "&${leftOut.rows}&IF(${leftOut.rows}=1," row"," rows")&" that Blanks leaves out of the plan: no label, see why there. ")`;
  return formula`${noPieces}&${noResin}&${out}`;
}

/** Labels for tubs and pieces, from Blanks and the Resin Book: on plain paper to cut, or on sheets of labels. */
export function labelsSheet(kit: Kit, shop: Shop, blanks: Blanks, resin: ResinBook): Page {
  const size = commonSizes[kit.system];
  const { across, down } = size;
  const [width, height, gap] = [size.width, size.height, size.gapAcross].map((length) => length * points[kit.system]);
  const inches = (length: number) => (length * points[kit.system]) / points.US;
  const told = toldSizes[kit.system];
  const widths = gap ? [width, gap, width, gap, width] : [width, width, width];
  const page = new Page("Labels", "Labels for tubs and pieces, filled from Blanks and the Resin Book.", [...widths.map(characters), 3, 8], {
    columns: widths.length,
  });
  page.sheet.hidden = widths.length;
  page.open("Labels");
  const step = gap ? 2 : 1;
  const head = page.row;
  for (const [i, label] of ["color of the tub", "day on the pieces", "first piece"].entries())
    page.put(head, i * step, { value: label, look: "label" });
  const color = page.put(head + 1, 0, { value: kit.demo ? "blue" : undefined, look: "input" });
  const date = page.put(head + 1, step, { look: "input", format: day, allowed: { date: true } });
  const first = page.put(head + 1, 2 * step, { value: 1, look: "input", allowed: { from: 1, to: 1e6, whole: true } });
  page.row = head + 2;
  page.say(`They print in their own size: ${told}. For other labels: Workbook in the side pane, Print labels.`);
  page.say(stateOf(blanks, resin));
  const top = page.row + 1;
  const upTo = upToRows(page, blanks, widths.length + 1);
  for (let label = 0; label < across * down; label++) {
    const column = (label % across) * step;
    const row = top + Math.floor(label / across) * lines;
    const texts =
      label < tubs ? tubLines(kit, shop, resin, color) : pieceLines(kit, shop, blanks, upTo, formula`(${first}+${label - tubs})`, date);
    for (const [i, text] of texts.entries()) {
      page.put(row + i, column, { formula: text, look: i === 0 ? "labelHead" : "labelLine" });
      page.sheet.heights.set(row + i, height * shares[i]);
    }
  }
  page.sheet.print = {
    exact: {
      area: refTo(page.sheet.name, top, 0, lines * down, widths.length),
      margins: { top: inches(size.top), left: inches(size.left) },
    },
  };
  return page;
}

import { type Formula, formula } from "../formula";
import type { Kit } from "../kit";
import { Page } from "../page";
import { cellIn, type Ref, refTo, whole } from "../place";
import { dayIn } from "../usdates";
import type { Blanks } from "./blanks";
import { day } from "./day";
import type { ResinBook } from "./resinbook";
import type { Shop } from "./shop";

/** Lines of one label. */
const lines = 4;
const across = 3;
/** The first of them are for tubs. */
const tubs = 3;

/** Points in an inch, and in a millimeter. */
const inch = 72;
const millimeter = 72 / 25.4;

/** The sheets of labels that are common in the two systems, three across: their size in points, and what lies around them. */
const sizes = {
  US: {
    down: 10,
    width: 2.625 * inch,
    height: inch,
    gap: 0.125 * inch,
    margins: { top: 0.5, left: 0.1875 },
    told: "2 5/8 by 1 in, 3 across and 10 down, on Letter",
  },
  SI: {
    down: 8,
    width: 70 * millimeter,
    height: 37 * millimeter,
    gap: 0,
    margins: { top: 0.02, left: 0 },
    told: "70 by 37 mm, 3 across and 8 down, on A4",
  },
};

/** A column so many points wide, in characters: a character is 5.25 points, and 3.75 stand around them. */
const characters = (points: number): number => (points - 3.75) / 5.25;

const shown = (cell: Ref, format: string): Formula => formula`IF(ISNUMBER(${cell}),TEXT(${cell},"${format}"),"________")`;

/** What a tub says: what, color, dye rate, when mixed, until when, and what never to forget. */
const tubLines = (kit: Kit, shop: Shop, { since, until }: ResinBook, color: Ref): Formula[] => [
  formula`"Mixed resin, "&IF(LEN(${color})>0,${color},"clear")`,
  formula`"mixed on "&${shown(since, dayIn(kit.system))}&", use by "&${shown(until, dayIn(kit.system))}`,
  formula`"dye "&${shown(shop.holds("resin dye rate"), "0.00")}&" ${kit.unit("strength")}"`,
  formula`"Wear gloves and eye protection. Ventilate. Keep it cool, lid loose, away from food and children."`,
];

/** What a piece says: number or kind, wood, dry weight, color, day. */
function pieceLines(kit: Kit, shop: Shop, { of }: Blanks, upTo: Ref, piece: Formula, color: Ref, date: Ref): Formula[] {
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
    said(formula`IF(LEN(${color})>0,${color}&", ","")&${shown(date, dayIn(kit.system))}`),
  ];
}

/** How many pieces there are up to each row of Blanks; a row without a count is one piece. */
function upToRows(page: Page, { of }: Blanks, column: number): Ref {
  for (let row = 0; row < of.kind.rows; row++) {
    const [kind, count] = [cellIn(of.kind, row), cellIn(of.count, row)];
    const before = row ? formula`${refTo(page.sheet.name, page.row + row - 1, column)}` : formula`0`;
    page.put(page.row + row, column, {
      formula: formula`${before}+IF(${kind}="",0,IF(ISNUMBER(${count}),MAX(0,INT(${count})),1))`,
      look: "note",
    });
  }
  return refTo(page.sheet.name, page.row, column, of.kind.rows);
}

/** Labels for tubs and pieces, from Blanks and the Resin Book: on plain paper to cut, or on sheets of labels. */
export function labelsSheet(kit: Kit, shop: Shop, blanks: Blanks, resin: ResinBook): Page {
  const { down, width, height, gap, margins, told } = sizes[kit.system];
  const widths = gap ? [width, gap, width, gap, width] : [width, width, width];
  const page = new Page("Labels", "Labels for tubs and pieces, filled from Blanks and the Resin Book.", [...widths.map(characters), 3, 8], {
    columns: widths.length,
  });
  page.sheet.hidden = widths.length;
  page.open("Labels");
  const step = gap ? 2 : 1;
  const head = page.row;
  for (const [i, label] of ["color", "day on the pieces", "first piece"].entries())
    page.put(head, i * step, { value: label, look: "label" });
  const color = page.put(head + 1, 0, { value: kit.demo ? "blue" : undefined, look: "input" });
  const date = page.put(head + 1, step, { look: "input", format: day, allowed: { date: true } });
  const first = page.put(head + 1, 2 * step, { value: 1, look: "input", allowed: { from: 1, to: 1e6, whole: true } });
  page.row = head + 2;
  page.say(
    `One label for each piece, from the first piece on. They print in their own size: ${told}. For other labels change the column widths, row heights and page margins to match.`,
  );
  const top = page.row + 1;
  const upTo = upToRows(page, blanks, widths.length + 1);
  for (let label = 0; label < across * down; label++) {
    const column = (label % across) * step;
    const row = top + Math.floor(label / across) * lines;
    const texts =
      label < tubs
        ? tubLines(kit, shop, resin, color)
        : pieceLines(kit, shop, blanks, upTo, formula`(${first}+${label - tubs})`, color, date);
    for (const [i, text] of texts.entries()) {
      page.put(row + i, column, { formula: text, look: i === 0 ? "labelHead" : "labelLine" });
      page.sheet.heights.set(row + i, height / lines);
    }
  }
  page.sheet.print = { exact: { area: refTo(page.sheet.name, top, 0, lines * down, widths.length), margins } };
  return page;
}

import { plainNumber } from "../../../shared/numberformat";
import { bake } from "../../cure/bake";
import { cooldown } from "../../cure/cooldown";
import { plan } from "../../plan/plan";
import { aroundAsk, ask, type Formula, formula } from "../formula";
import type { Kit } from "../kit";
import type { Page } from "../page";
import { cellIn, type Ref, refTo, whole } from "../place";
import { sheetTable } from "../sheettable";
import { shopIsWrong } from "../verdict";
import type { Blanks } from "./blanks";
import { type Each, each } from "./three";

const rows = 4;
const demo: Each<readonly (readonly [kind: string, count: number])[]> = [[["spalted boxelder", 4]], [], []];

/** What a load takes does not ask what is on hand: that counts where resin is mixed. */
const stock = ["resinOnHand", "resinMixedOn", "resinDyeRate", "dyeRate", "packetMakes", "catalyzedMonths"];

/** The pieces of one load, as PLAN takes them: pieces, count, three sizes, gravity. */
export interface LoadOf {
  readonly block: Ref;
  readonly count: Formula;
  readonly volume: Formula;
  readonly weight: Formula;
  /** One of its answers, by the words that head its column; undefined where a plan has no such column. */
  readonly planned: (...titles: readonly string[]) => Formula | undefined;
  /** The longest bake of its pieces, in a shop with these settings. */
  readonly slowest: (shop: Ref) => Formula;
  readonly first: { readonly thickness: Ref; readonly width: Ref; readonly length: Ref; readonly gravity: Ref };
  /** What keeps each of its rows out, in words. */
  readonly problems: Ref;
  /** How long its slowest pieces cool. */
  readonly slowestCooling: Formula;
  /** How full its first pieces are counted on to get. */
  readonly fullness: Ref;
  /** The color that Blanks has for the first pieces of this load or of one before it, behind a mark; nothing where none is known. */
  readonly color: Ref;
}

export interface Vessel {
  readonly chamber: Ref;
  readonly height: Ref;
  /** What holds in the shop, but for its tubs. */
  readonly shop: Ref;
}

const columns = Object.values((plan.returns as { of: Readonly<Record<string, { label: string }>> }).of).map(({ label }) => label);

/** Three tables of pieces: a row of Blanks brings its sizes along, another piece has them typed. */
export function loadTables(page: Page, kit: Kit, blanks: Blanks, vessel: Vessel): Each<LoadOf> {
  const { of } = blanks;
  const length = kit.unit("length");
  let above: Ref | undefined;
  return each((load) => {
    for (const column of [2, 3, 4]) page.put(page.row, column, { value: length, look: "unit", format: plainNumber });
    const { of: own } = sheetTable(
      page,
      {
        kind: {
          title: `Load ${load + 1}: pieces`,
          input: { list: whole(of.kind) },
          hint: "A row of Blanks, or a name of your own with its sizes typed.",
        },
        count: { title: "count", input: { from: 1, to: 1e4, whole: true } },
      },
      kit.demo ? demo[load].map(([kind, count]) => ({ kind, count })) : [],
      { spare: rows - (kit.demo ? demo[load].length : 0) },
    );
    const top = own.kind.row;
    const picked =
      (source: Ref): ((row: number) => Formula) =>
      (row) => {
        const kind = cellIn(own.kind, row);
        return formula`IF(${kind}="","",IF(COUNTIF(${whole(of.kind)},${kind})=0,"",INDEX(${whole(source)},MATCH(${kind},${whole(of.kind)},0))))`;
      };
    const taken: [title: string, source: Ref, format: string][] = [
      ["thickness", of.thickness, "General"],
      ["width", of.width, "General"],
      ["length", of.length, "General"],
      ["gravity", of.gravity, "0.00"],
    ];
    for (const [i, [title, source, format]] of taken.entries()) {
      page.put(top - 1, 2 + i, { value: title, look: "heading", format: plainNumber });
      for (let row = 0; row < rows; row++)
        page.put(top + row, 2 + i, {
          formula: picked(source)(row),
          format,
          look: "input",
          hint: "From Blanks; type over it for a piece that is not there.",
        });
    }
    page.put(top - 1, 6, { value: "problem", look: "heading" });
    const block = refTo(page.sheet.name, top, 0, rows, 6);
    const planned = plannedRows(page, block, blanks, own.kind);
    const colors = colorRows(page, block, blanks, own.kind, above);
    above = cellIn(colors.first, rows - 1);
    for (let row = 0; row < rows; row++) {
      const kind = cellIn(own.kind, row);
      const sizes = refTo(page.sheet.name, top + row, 2, 1, 4);
      const there = formula`SUMIF(${whole(of.kind)},${kind},${whole(of.count)})`;
      const wrong = formula`INDEX(${whole(of.wrong)},MATCH(${kind},${whole(of.kind)},0))`;
      const ref = page.put(top + row, 6, {
        formula: formula`IF(${kind}="",IF(${cellIn(own.count, row)}="","","name these pieces"),IF(IF(ISNUMBER(${cellIn(own.count, row)}),OR(${cellIn(own.count, row)}<1,${cellIn(own.count, row)}<>INT(${cellIn(own.count, row)})),TRUE),"how many? type a whole number",IF(COUNTIF(${whole(of.kind)},${kind})=0,IF(COUNT(${sizes})<4,"no such row on Blanks: type three sizes and how dense it is",""),IF(LEN(${wrong})>0,"Blanks: "&${wrong},IF(${colors.differs(row)},${colors.words(row)},IF(${cellIn(own.count, row)}>${there},"Blanks has only "&${there}&" of these",""))))))`,
        look: "alarm",
      });
      page.alert("bad", ref, formula`LEN(${ref})>0`);
    }
    const column = (index: number) => refTo(page.sheet.name, top, index, rows);
    const sizes = (many = rows) => {
      const [thickness, width, length, gravity] = [2, 3, 4, 5].map((index) => refTo(page.sheet.name, top, index, many));
      return { thickness, width, length, gravity };
    };
    const problems = refTo(page.sheet.name, top, 6, rows);
    // With a row that cannot go in, no number of the load would be true of the rest.
    const some = formula`OR(${shopIsWrong},SUM(${column(1)})=0,SUMPRODUCT(LEN(${problems}))>0)`;
    const planAt = (at: number) =>
      formula`IF(${some},"",${aroundAsk({ contract: plan, given: { pieces: planned, chamber: vessel.chamber, height: vessel.height, shop: vessel.shop }, at: [2, at], apartFrom: stock })})`;
    return {
      block,
      problems,
      slowestCooling: formula`IF(${some},"",MAX(${ask(cooldown, sizes())}))`,
      count: formula`IF(${some},"",SUM(${column(1)}))`,
      volume: formula`IF(${some},"",SUMPRODUCT(${column(1)},${column(2)},${column(3)},${column(4)})/${kit.by(1, 1000)})`,
      weight: formula`IF(${some},"",SUMPRODUCT(${column(1)},${column(2)},${column(3)},${column(4)},${column(5)})*${kit.by(16.387064, 0.001)})`,
      planned: (...titles) => {
        const at = columns.findIndex((title) => titles.includes(title));
        return at < 0 ? undefined : planAt(at + 1);
      },
      slowest: (shop) => formula`IF(${some},"",MAX(${ask(bake, { ...sizes(), shop })}))`,
      fullness: refTo(page.sheet.name, top, planned.column + planned.columns - 1),
      color: above,
      first: sizes(1),
    } satisfies LoadOf;
  });
}

/** Columns out of sight and off the paper, where the pieces of a load stand as PLAN takes them: with no color, and with the fullness of their wood. */
const aside = 9;

function plannedRows(page: Page, block: Ref, { of }: Blanks, kinds: Ref): Ref {
  for (let row = 0; row < block.rows; row++) {
    for (let column = 0; column < block.columns; column++) {
      const cell = refTo(page.sheet.name, block.row + row, block.column + column);
      page.put(block.row + row, aside + column, { formula: formula`IF(${cell}="","",${cell})`, look: "note" });
    }
    const kind = cellIn(kinds, row);
    page.put(block.row + row, aside + block.columns + 1, {
      formula: formula`IF(${kind}="","",IFERROR(INDEX(${whole(of.fullness)},MATCH(${kind},${whole(of.kind)},0)),""))`,
      look: "note",
      format: "0%",
    });
  }
  return refTo(page.sheet.name, block.row, aside, block.rows, block.columns + 2);
}

/** Further columns out of sight: the color that Blanks has for a row, and the first one known down to it. One run mixes one color. */
function colorRows(page: Page, block: Ref, { of }: Blanks, kinds: Ref, above: Ref | undefined) {
  const column = aside + block.columns + 2;
  const own = (row: number) => refTo(page.sheet.name, block.row + row, column);
  const first = refTo(page.sheet.name, block.row, column + 1, block.rows);
  for (let row = 0; row < block.rows; row++) {
    const kind = cellIn(kinds, row);
    const known = formula`":"&LOWER(TRIM(INDEX(${whole(of.color)},MATCH(${kind},${whole(of.kind)},0))))`;
    page.put(block.row + row, column, {
      formula: formula`IF(${kind}="","",IF(COUNTIF(${whole(of.kind)},${kind})=0,"",${known}))`,
      look: "note",
    });
    const before = row ? cellIn(first, row - 1) : above;
    const found = before ? formula`IF(LEN(${before})>0,${before},${own(row)})` : formula`${own(row)}`;
    page.put(block.row + row, column + 1, { formula: found, look: "note" });
  }
  const said = (color: Ref) => formula`IF(LEN(${color})>1,MID(${color},2,60),"none")`;
  return {
    first,
    differs: (row: number) => formula`IF(LEN(${own(row)})>0,${own(row)}<>${cellIn(first, row)},FALSE)`,
    words: (row: number) =>
      formula`"color "&${said(own(row))}&" here, "&${said(cellIn(first, row))}&" above: one run takes one color of resin"`,
  };
}

import { bake } from "../../cure/bake";
import { cooldown } from "../../cure/cooldown";
import { plan } from "../../plan/plan";
import { aroundAsk, ask, type Formula, formula } from "../formula";
import type { Kit } from "../kit";
import type { Page } from "../page";
import { cellIn, type Ref, refTo, whole } from "../place";
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
  return each((load) => {
    page.put(page.row, 2, { value: length, look: "unit" });
    const { of: own } = page.table(
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
      page.put(top - 1, 2 + i, { value: title, look: "heading" });
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
    for (let row = 0; row < rows; row++) {
      const kind = cellIn(own.kind, row);
      const sizes = refTo(page.sheet.name, top + row, 2, 1, 4);
      const there = formula`SUMIF(${whole(of.kind)},${kind},${whole(of.count)})`;
      const wrong = formula`INDEX(${whole(of.wrong)},MATCH(${kind},${whole(of.kind)},0))`;
      const ref = page.put(top + row, 6, {
        formula: formula`IF(${kind}="",IF(${cellIn(own.count, row)}="","","name these pieces"),IF(IF(ISNUMBER(${cellIn(own.count, row)}),${cellIn(own.count, row)}<1,TRUE),"how many? type a count",IF(COUNTIF(${whole(of.kind)},${kind})=0,IF(COUNT(${sizes})<4,"no such row on Blanks: type three sizes and how dense it is",""),IF(LEN(${wrong})>0,"Blanks: "&${wrong},IF(${cellIn(own.count, row)}>${there},"Blanks has only "&${there}&" of these","")))))`,
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
    const some = formula`OR(SUM(${column(1)})=0,SUMPRODUCT(LEN(${problems}))>0)`;
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

import { type Formula, formula } from "../formula";
import type { Kit } from "../kit";
import type { Page } from "../page";
import type { Ref } from "../place";
import type { Columns } from "../sheettable";
import { ownReason } from "../verdict";
import type { Shop } from "./shop";
import { measured, replaced, spellings, unitOf } from "./sidetext";

/** What pieces go into, as far as a built-in formula can tell: its clear width, its clear depth where it is rectangular, and the height left for pieces. */
export interface Vessel {
  readonly clear: Ref;
  readonly deep: Ref;
  readonly room: Ref;
  /** True where the tub is told in words that these formulas do not read. */
  readonly isStrange: Formula;
}

/** Larger than the tub in each of the three ways to stand or lie, or than a shelf of the oven. */
export function tooLarge({ thickness, width, length }: Columns, shop: Shop, { clear, deep: across, room }: Vessel): Formula {
  const slack = "1.000000001";
  const lies = (a: Ref, b: Ref) =>
    formula`IF(${across}="",${a}^2+${b}^2<=SUM(${clear})^2*${slack},AND(MAX(${a},${b})<=MAX(${clear},${across})*${slack},MIN(${a},${b})<=MIN(${clear},${across})*${slack}))`;
  const goes = (up: Ref, a: Ref, b: Ref) => formula`AND(${up}<=${room}*${slack},${lies(a, b)})`;
  const inTub = formula`OR(${goes(length, thickness, width)},${goes(thickness, width, length)},${goes(width, thickness, length)})`;
  const [most, least] = [formula`MAX(${thickness},${width},${length})`, formula`MIN(${thickness},${width},${length})`];
  const middle = formula`${thickness}+${width}+${length}-${most}-${least}`;
  const [wide, deep] = [shop.holds("oven width"), shop.holds("oven depth")];
  const onShelf = formula`AND(${most}<=MAX(${wide},${deep})*${slack},${middle}<=MIN(${wide},${deep})*${slack})`;
  return formula`IF(IF(COUNT(${clear},${room})=2,${inTub},TRUE),IF(${onShelf},"","larger than an oven shelf"),"larger than the tub")`;
}

/** The tub's clear width and depth and the height that cover and foam leave for pieces; words where they are missing, or typed in words that only the functions read. */
export function vesselOf(page: Page, kit: Kit, shop: Shop, column: number): Vessel {
  let row = 1;
  const own = (label: string, made: Formula): Ref => {
    page.put(row, column, { value: label, look: "note" });
    return page.put(row++, column + 1, { formula: made, look: "note", format: "0.00" });
  };
  const [tub, height] = [shop.typed("tub"), shop.typed("tub height")];
  const inside = formula`IF(${tub}="",${shop.chamber},${tub})`;
  const high = formula`IF(OR(${tub}="",${height}=""),${shop.height},${height})`;
  const clearOf = (side: Ref): Formula => formula`IF(ISNUMBER(${side}),${side}-2*${shop.holds("gap")},"")`;
  const room = own(
    "height for pieces",
    formula`IF(AND(ISNUMBER(${high}),${high}>0),${high}*(1-${shop.holds("foam room")})-${shop.holds("cover")},"")`,
  );
  const words = own(
    "the tub in few words",
    formula`IF(ISTEXT(${inside}),TRIM(${replaced(formula`SUBSTITUTE(LOWER(${inside}),CHAR(34),"in")`, spellings)}),"")`,
  );
  const cross = formula`FIND("x",${words}&"x")`;
  const second = own("its second side", formula`TRIM(MID(${words},${cross}+1,60))`);
  const unit = own("its unit", unitOf(formula`IF(${second}="",${words},${second})`, formula`"${kit.unit("length")}"`));
  const first = own(
    "its width",
    // Not every program takes no words at all for an error.
    formula`IF(ISNUMBER(${inside}),${inside},IF(${words}="","",${measured(formula`TRIM(LEFT(${words},${cross}-1))`, unit, kit)}))`,
  );
  const depth = own("its depth", formula`IF(${second}="","",${measured(second, unit, kit)})`);
  const isStrange = formula`AND(ISTEXT(${tub}),COUNT(${first},${depth})<1+(LEN(${second})>0))`;
  return { clear: own("clear width of the tub", clearOf(first)), deep: own("clear depth of the tub", clearOf(depth)), room, isStrange };
}

/** Rows that could not be checked look like rows that fit: a sentence above the table says so. */
export function tellStrange(page: Page, row: number, { isStrange }: Vessel, kit: Kit): void {
  const example = kit.by("8 x 5", "200 x 120");
  const words = `The tub on My Shop cannot be read here, so sizes are not checked against it: Loads checks them. Type it like this: ${example} ${kit.unit("length")}.`;
  const at = page.put(row, 0, { formula: ownReason(formula`IF(${isStrange},"${words}","")`), look: "note" });
  page.alert("attention", at, formula`LEN(${at})>0`);
}

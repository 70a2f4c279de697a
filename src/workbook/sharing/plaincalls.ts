import type { Cells } from "../../../shared/columns";
import { readShop } from "../../catalogue";
import { type Ask, isRef, noShop } from "../formula";
import { isColumn, type Ref, refText, refTo } from "../place";
import { type Habits, plain } from "../plain";
import { type BakeTable, bakeLookup, bakeTable, headingRows } from "./baketable";
import type { OpenSheet } from "./opened";
import type { Called, NameOf } from "./parsed";
import { habitsOf, shopCells } from "./shopasked";
import { woodLookup } from "./woodtable";

/** Makes plain formulas of the calls in one workbook. */
export class Twins {
  private readonly shops = new Map<string, { readonly habits: Habits; readonly table: BakeTable } | undefined>();
  /** One for each shop whose oven is asked: the likely range asks with the ends of what the oven may do. */
  readonly tables: BakeTable[] = [];
  /** Whether woods are looked up. */
  woods = false;

  constructor(
    private readonly sheets: readonly OpenSheet[],
    readonly nameOf: NameOf,
  ) {}

  private shopOf(range: Ref | undefined) {
    const key = range ? refText({ ...range, whole: true }, "", undefined) : "";
    if (!this.shops.has(key)) this.shops.set(key, this.read(range));
    return this.shops.get(key);
  }

  /** Undefined where the shop cannot be read: then its cells stay values. */
  private read(range: Ref | undefined) {
    try {
      const cells: Cells = range ? shopCells(this.sheets, range) : [["US"]];
      const shop = readShop(cells);
      return { habits: habitsOf(this.sheets, range ?? refTo("", 0, 0, 0), shop), table: bakeTable(shop, cells) };
    } catch {
      return undefined;
    }
  }

  /** A call in plain formulas, for one row of what it fills. */
  of({ contract, given }: Called, from: string, row: number | undefined, column: number): string | undefined {
    if (
      !given ||
      (row === undefined &&
        contract.per === "piece" &&
        Object.entries(given).some(([key, ref]) => key !== "shop" && isRef(ref) && isColumn(ref)))
    )
      return undefined;
    if (contract.name === "GRAVITY") {
      const found = woodLookup(given, from, row);
      this.woods ||= found !== undefined;
      return found;
    }
    const { shop } = given;
    const stands = this.shopOf(isRef(shop) ? shop : undefined);
    if (!stands) return undefined;
    if (contract.name === "BAKE") {
      if (!this.tables.includes(stands.table)) this.tables.push(stands.table);
      const top = headingRows(this.tables)[this.tables.indexOf(stands.table)];
      return bakeLookup(stands.table, top, given, from, row);
    }
    const { shop: _, ...rest } = given;
    const ask: Ask = {
      contract,
      given: isRef(shop) || !contract.shop ? rest : { ...rest, shop: shop ?? noShop },
      ...(contract.returns.form === "row" ? { at: [1, column + 1] as const } : {}),
    };
    return plain(stands.habits).write(ask, from, row);
  }
}

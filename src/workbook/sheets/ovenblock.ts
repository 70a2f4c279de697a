import { bakeBy, ovenSurfaceCoefficient } from "../../cure/settings";
import type { Look } from "../book";
import { type Formula, formula } from "../formula";
import type { Kit } from "../kit";
import type { Page } from "../page";
import { type Ref, refTo } from "../place";
import type { Shop } from "./shop";

/** What a bake stands on, beside the heat that passes into the surface. */
export const bakedBy = ["oven", "room", "core", "hold", "shortest bake", "fullness", "thickest"];

/** Settings of the shop with some of them otherwise: two columns, as a function takes a shop. */
export function ovenBlock(
  page: Page,
  kit: Kit,
  shop: Shop,
  at: { readonly row: number; readonly column: number },
  title: string,
  otherwise: readonly (readonly [name: string, value: Formula])[],
  looks: { readonly heading: Look; readonly words: Look },
): Ref {
  const rows: (readonly [string, Formula])[] = [
    ["units", formula`"${kit.system}"`],
    ...bakedBy.map((name) => [name, formula`${shop.holds(name)}`] as const),
    ...otherwise,
  ];
  page.put(at.row, at.column, { value: title, look: looks.heading });
  page.put(at.row, at.column + 1, { look: looks.heading });
  for (const [i, [name, holds]] of rows.entries()) {
    page.put(at.row + 1 + i, at.column, { value: name, look: looks.words });
    page.put(at.row + 1 + i, at.column + 1, { formula: holds, look: looks.words });
  }
  return refTo(page.sheet.name, at.row + 1, at.column, rows.length, 2);
}

/** The shop as it bakes at one end of the likely range. */
export const atEnd = (page: Page, kit: Kit, shop: Shop, at: { row: number; column: number }, end: "short end" | "long end"): Ref =>
  ovenBlock(
    page,
    kit,
    shop,
    at,
    `bake, ${end}`,
    [
      [ovenSurfaceCoefficient.name, formula`${shop.holds(ovenSurfaceCoefficient.name)}`],
      [bakeBy.name, formula`"${end}"`],
    ],
    { heading: "heading", words: "note" },
  );

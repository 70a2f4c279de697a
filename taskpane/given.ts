import { shopOf } from "../shared/call";
import type { Cells } from "../shared/columns";
import type { Contract } from "../shared/contract";
import { type Given, outlineOf, readGiven } from "../shared/given";
import type { Units } from "../shared/unit";
import { rowOf } from "../shared/working";
import { readShop } from "../src/catalogue";

export interface Read {
  readonly contract: Contract;
  readonly given: Given;
  readonly units: Units;
}

/** The values that one row of a call worked with, in internal units, for a drawing; throws Trouble where they are none. */
export function valuesOf(contract: Contract, cells: readonly (Cells | undefined)[], row: number): Read {
  const outline = outlineOf(contract);
  const shop = shopOf(outline, cells, readShop);
  return { contract, given: readGiven(outline, rowOf(outline, cells, row), shop).given, units: shop.units };
}

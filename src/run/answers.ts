import { quantity } from "../../shared/argument";
import type { Cells } from "../../shared/columns";
import { parameters } from "../../shared/contract";
import { type Cell, type Outcome, Trouble } from "../../shared/outcome";
import { fromInternal } from "../../shared/unit";
import { call, catalogue, readShop } from "../catalogue";
import { settings } from "../shop";

export type ShopRows = readonly (readonly [string, Cell])[];

/** What a run takes from the functions and the shop's settings, as a sheet would. */
export interface Answers {
  /** The cells of a function's answer; an argument is a cell or a block of cells. */
  ask(name: string, given: Readonly<Record<string, Cell | Cells>>, shop: ShopRows): Outcome[][];
  /** What a setting holds, in plain units; undefined where nothing does. */
  holds(name: string, shop: ShopRows): Cell;
  /** A length as a person types it, "3/4" or "19 mm", in plain units; words where it is none. */
  length(typed: Cell, label: string, shop: ShopRows): number | string;
}

export const answers: Answers = {
  ask(name, given, shop) {
    const contract = catalogue.find((one) => one.name === name);
    if (!contract) throw new Error(`there is no function ${name}`);
    const all: Readonly<Record<string, Cell | Cells>> = { ...given, shop: shop.map(([label, value]) => [label, value]) };
    return call(
      contract,
      parameters(contract).map(([id]) => {
        const value = all[id];
        return value === undefined ? undefined : Array.isArray(value) ? (value as Cells) : [[value as Cell]];
      }),
    );
  },
  holds(name, rows) {
    const setting = settings.find((one) => one.name === name);
    if (!setting) return undefined;
    const shop = readShop(rows);
    const value = shop.get(setting);
    if (typeof value === "object" && value !== null) return setting.say?.(value, shop.units);
    return typeof value === "number" && setting.kind ? fromInternal(value, shop.units[setting.kind]) : (value as Cell);
  },
  length(typed, label, rows) {
    const { units } = readShop(rows);
    try {
      return fromInternal(quantity("length", label, 0.75, [0.01, 400]).read(typed, units), units.length);
    } catch (trouble) {
      if (trouble instanceof Trouble) return trouble.in(units).message;
      throw trouble;
    }
  },
};

import { type Arg, isBlank } from "./argument";
import { type Cells, isSingle } from "./columns";
import * as message from "./message";
import { nearest } from "./nearest";
import { badInput, type Cell, handedOn, isFault, Trouble } from "./outcome";
import { plainUnits, type Scale, toInternal, type Units } from "./unit";
import type { System } from "./unittable";

/** A fact about the shop that a function uses when no argument says otherwise. */
export interface Setting<T = any> extends Arg<T> {
  readonly name: string;
  readonly basis: string;
  /** Other spellings under which it is found. */
  readonly also?: readonly string[];
  /** The default in internal units, which may depend on other settings. */
  readonly fallback: (shop: Shop) => T;
}

export const isSetting = (arg: Arg): arg is Setting => "fallback" in arg;

const us = plainUnits("US");

/** Fallbacks of numbers are stated in plain US units; a function derives one from other settings. */
export function setting<T>(
  name: string,
  arg: Arg<T>,
  fallback: number | string | ((shop: Shop) => T) | undefined,
  basis: string,
  ...also: readonly string[]
): Setting<T> {
  const fixed = (typeof fallback === "number" && arg.kind ? toInternal(fallback, us[arg.kind]) : fallback) as T;
  return { ...arg, optional: true, name, basis, also, fallback: typeof fallback === "function" ? fallback : () => fixed };
}

/** What the shop's range says, with defaults for the rest. */
export class Shop {
  private readonly values = new Map<Setting, unknown>();

  constructor(
    readonly units: Units,
    private readonly given: ReadonlyMap<string, unknown>,
  ) {}

  get<T>(setting: Setting<T>): T {
    if (this.given.has(setting.name)) return this.given.get(setting.name) as T;
    if (!this.values.has(setting)) this.values.set(setting, setting.fallback(this));
    return this.values.get(setting) as T;
  }
}

/** For a function without a shop argument: its weights may be in any unit, all in the same, so none is named. */
export const noShop = new Shop({ ...us, weight: { ...us.weight, name: "" } }, new Map());

/** "Hold down", "hold-down" and "HoldDown" name one setting. */
const fold = (name: string) => name.toLowerCase().replace(/[^a-z0-9]/g, "");

const systemOf = (cell: Cell): System | undefined => {
  const word = typeof cell === "string" ? cell.trim().toUpperCase() : undefined;
  return word === "US" || word === "SI" ? word : undefined;
};

const unitsName = "units";
const scaleName = "scale reads";

/** Reads the `shop` argument for a catalogue whose settings are these. */
export function shopReader(settings: readonly Setting[]) {
  const known = new Map(settings.flatMap((s) => [s.name, ...(s.also ?? [])].map((name) => [fold(name), s])));
  const names = settings.map((s) => s.name);
  const none = new Map<string, unknown>();
  const standard = { US: new Shop(us, none), SI: new Shop(plainUnits("SI"), none) };

  const find = (cell: Cell): Setting => {
    const name = String(cell).trim();
    const found = known.get(fold(name));
    if (!found) throw message.unknownSetting(name, nearest(name, names)[0]);
    return found;
  };

  /** Name and value of each filled row; headings and untouched rows have no value and are passed over. */
  const pairs = (cells: Cells): (readonly [Setting, Cell])[] =>
    cells.flatMap(([name, value], row) => {
      if (isFault(name)) throw handedOn(name);
      if (isBlank(value) || (row === 0 && fold(String(name)) === "setting")) return [];
      if (isBlank(name)) throw badInput`shop, row ${row + 1}: a value has no setting name beside it`;
      return [[find(name), value] as const];
    });

  return (cells: Cells | undefined): Shop => {
    if (!cells?.length) return standard.US;
    const [[single]] = cells;
    if (isFault(single)) throw handedOn(single);
    if (isSingle(cells)) {
      if (isBlank(single)) return standard.US;
      const system = systemOf(single);
      if (!system) throw message.shopShape();
      return standard[system];
    }
    if (cells[0].length !== 2) throw message.shopShape();
    const found = pairs(cells);
    const word = (name: string) => found.filter(([s]) => s.name === name).at(-1);
    const system = word(unitsName);
    const scale = word(scaleName);
    const units = plainUnits(
      system ? (system[0].read(system[1], us) as System) : "US",
      scale ? (scale[0].read(scale[1], us) as Scale) : undefined,
    );
    return new Shop(units, new Map(found.map(([s, value]) => [s.name, inShop(s, value, units)])));
  };
}

function inShop(setting: Setting, value: Cell, units: Units): unknown {
  try {
    return setting.read(value, units);
  } catch (trouble) {
    // Put into words here, in the shop's units: before the shop is read, a call would tell it in US units.
    throw trouble instanceof Trouble ? handedOn(trouble.about(`shop, ${setting.name}: `).in(units)) : trouble;
  }
}

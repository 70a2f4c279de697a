import { type Arg, isEmpty } from "./argument";
import { type Cells, isSingle, readCell } from "./columns";
import type { Contract } from "./contract";
import * as message from "./message";
import type { Cell } from "./outcome";
import { isSetting, type Setting, type Shop } from "./settings";
import type { Unit } from "./unit";

/** Values by the names a contract gives them, in internal units: what `run` takes. */
export type Given = Record<string, unknown>;

/** A contract's arguments and settings as lists, worked out once. */
export interface Outline {
  readonly contract: Contract;
  readonly args: readonly (readonly [name: string, arg: Arg])[];
  readonly settings: readonly (readonly [name: string, setting: Setting])[];
}

const outlines = new WeakMap<Contract, Outline>();

export function outlineOf(contract: Contract): Outline {
  const known = outlines.get(contract);
  if (known) return known;
  const outline = { contract, args: Object.entries<Arg>(contract.args), settings: Object.entries<Setting>(contract.shop ?? {}) };
  outlines.set(contract, outline);
  return outline;
}

/** The settings in force. */
export function fromShop(outline: Outline, shop: Shop): Given {
  const given: Given = {};
  for (const [name, setting] of outline.settings) given[name] = shop.get(setting);
  return given;
}

function absent(arg: Arg, shop: Shop): unknown {
  if (isSetting(arg)) return shop.get(arg);
  if (arg.optional) return arg.otherwise;
  throw message.missing(arg.label, arg.sample(shop.units));
}

interface Read {
  readonly value: unknown;
  /** The unit a weight was typed in: the answer goes out in it. */
  readonly typedIn?: Unit;
}

/** One cell as an argument's value: explicit, else the shop's, else the default. */
export const readOne = (cell: Cell, arg: Arg, shop: Shop): Read =>
  isEmpty(cell, arg, shop.units) ? { value: absent(arg, shop) } : readCell(cell, arg, shop.units);

function readWhole(cells: Cells | undefined, arg: Arg, shop: Shop): Read {
  if (!cells || isSingle(cells)) {
    const cell = cells?.[0][0];
    return arg.take && !isEmpty(cell, arg, shop.units) ? { value: arg.take([[cell]], shop.units) } : readOne(cell, arg, shop);
  }
  if (arg.take) return { value: arg.take(cells, shop.units) };
  throw message.oneCell(arg.label);
}

/** Every argument of one call, and the unit its weights were typed in. */
export function readGiven(outline: Outline, cells: readonly (Cells | undefined)[], shop: Shop): { given: Given; typedIn?: Unit } {
  const given = fromShop(outline, shop);
  let typedIn: Unit | undefined;
  outline.args.forEach(([name, arg], i) => {
    const read = readWhole(cells[i], arg, shop);
    given[name] = read.value;
    typedIn ??= read.typedIn;
  });
  return { given, typedIn };
}

import type { Call } from "../../shared/host";
import { Trouble } from "../../shared/outcome";
import type { Units } from "../../shared/unit";
import { catalogue } from "../../src/catalogue";
import type { Given } from "../../src/plan/given";
import { type Plan, planOf } from "../../src/plan/planned";
import { valuesOf } from "../given";
import { type Drawing, measured } from "./drawing";
import { kindsOf } from "./lettering";
import { loadFromAbove, loadFromSide, type Packing } from "./load";
import { hoursIn, momentName } from "./moments";
import { daysOf, weekDrawing } from "./week";

/** A plan that a call asked for, with what its drawings want to know. */
export interface Drawable {
  readonly plan: Plan;
  readonly given: Given;
  readonly units: Units;
}

const known = new WeakMap<Call["cells"], Drawable | undefined>();

function drawable({ name, cells }: Call): Drawable | undefined {
  const contract = catalogue.find((one) => one.name === name);
  if (!contract) return undefined;
  try {
    const { given, units } = valuesOf(contract, cells, 0);
    const plan = planOf(given as unknown as Given);
    return plan.loads.length ? { plan, given: given as unknown as Given, units } : undefined;
  } catch (trouble) {
    if (trouble instanceof Trouble) return undefined;
    throw trouble;
  }
}

/** The plan of a call, made once however often it is drawn; undefined where there is none. */
export function planned(call: Call): Drawable | undefined {
  if (call.name !== "PLAN" && call.name !== "SHOPPINGLIST") return undefined;
  if (!known.has(call.cells)) known.set(call.cells, drawable(call));
  return known.get(call.cells);
}

/** How many weeks there are after the first. */
export function weeksAfter({ plan }: Drawable): number {
  const [first, last] = daysOf(plan);
  return Math.floor((last - first) / 7);
}

export const week = ({ plan, given, units }: Drawable, number: number): Drawing =>
  weekDrawing(plan, daysOf(plan)[0] + 7 * number, given.vacuumHours, units);

/** A load from above, layer by layer, and from the side. */
export function loadDrawings({ plan, given, units }: Drawable, at: number): Drawing[] {
  const packing: Packing = { plan, load: plan.loads[at], number: at + 1, kinds: kindsOf(plan), shop: given, units };
  return [loadFromAbove(packing), loadFromSide(packing)];
}

export interface Told {
  readonly name: string;
  readonly resin: string;
  readonly startBy: string;
  readonly done: string;
}

/** A load in words: what it is, when its loading begins, and when it is done. */
export function told({ plan, units }: Drawable, at: number): Told {
  const { count, colorName, pour, add, from, done } = plan.loads[at];
  const start = Math.min(...plan.loads.map((load) => load.from));
  const moment = (seconds: number) => {
    const name = momentName(plan, seconds, units.system);
    return plan.midnight === undefined ? `${name} (${hoursIn(seconds - start)})` : name;
  };
  const fluid = (volume: number) => measured(units, "fluid", volume, 2);
  return {
    name: `Load ${at + 1}: ${count === 1 ? "1 piece" : `${count} pieces`}${colorName ? `, ${colorName}` : ""}`,
    resin: `pour ${fluid(pour)}${add > 5e-6 ? `, add ${fluid(add)} once the air is in` : ""}`,
    startBy: moment(from),
    done: moment(done),
  };
}

import { caller } from "../shared/call";
import type { Contract } from "../shared/contract";
import { shopReader } from "../shared/settings";
import { explainer } from "../shared/working";
import { chamber } from "./chamber";
import { cost } from "./cost";
import { cure } from "./cure";
import { planning } from "./plan";
import { resin } from "./resin";
import { settings } from "./shop";
import { vacuum } from "./vacuum";
import { version } from "./version";
import { wood } from "./wood";

/** Every function, by subject, in the order of the work. */
export const subjects: Readonly<Record<string, readonly Contract[]>> = {
  wood,
  chamber,
  vacuum,
  resin,
  cure,
  cost,
  plan: planning,
  also: [version],
};

export const catalogue: readonly Contract[] = Object.values(subjects).flat();

/** Namespace of the functions in a cell. */
export const namespace = "PORE";

/** The name as typed in a cell: PORE.FILL. */
export const cellName = (contract: Contract): string => `${namespace}.${contract.name}`;

/** Answers one call: see `caller`. */
export const readShop = shopReader(settings);
export const call = caller(readShop);

/** Explains one answer: see `explainer`. */
export const explain = /* @__PURE__ */ explainer(readShop);

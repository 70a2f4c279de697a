import type { Contract } from "../../shared/contract";
import { outlineOf } from "../../shared/given";
import { cellName } from "../../src/catalogue";

/** `PORE.FILL(chamber, stack, solids, [uptake], [shop])` */
export function signature(contract: Contract): string {
  const own = outlineOf(contract).args.map(([name, arg]) => (arg.optional ? `[${name}]` : name));
  return `${cellName(contract)}(${[...own, ...(contract.shop ? ["[shop]"] : [])].join(", ")})`;
}

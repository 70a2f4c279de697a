import { type Arg, quantity } from "../../shared/argument";
import { badInput, type Cell, said } from "../../shared/outcome";
import type { Quantity } from "../../shared/quantity";
import { findUnit } from "../../shared/unit";

const reading = quantity("pressure", "gauge reading", 25, [0, 40]);

const unsigned = (cell: Cell): Cell => {
  if (typeof cell === "number") return Math.abs(cell);
  return typeof cell === "string" ? cell.replace(/^\s*[-−–]\s*/, "") : cell;
};

/** Depth of vacuum under the air outside. Many dials print a minus sign, which is ignored. */
export const gaugeArg: Arg<Quantity<"pressure">> = { ...reading, read: (cell, units) => reading.read(unsigned(cell), units) };

/** A day of high pressure lets a gauge read this much deeper than the air pressure worked out. */
export const highPressureDay = findUnit("pressure", "inHg")!.factor;

/** Absolute pressure left in the chamber. A gauge a little deeper than the air pressure counts as empty. */
export function pressureLeft(gauge: number, air: number): number {
  if (gauge > (air + highPressureDay) * (1 + 1e-9))
    throw badInput`gauge reading of ${said("pressure", gauge)} is deeper than the air pressure here, ${said("pressure", air)}: check the unit, the altitude and the barometer`;
  return Math.max(0, air - gauge);
}

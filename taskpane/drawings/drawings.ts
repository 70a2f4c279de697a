import type { Contract } from "../../shared/contract";
import type { Call } from "../../shared/host";
import { Trouble } from "../../shared/outcome";
import { valuesOf } from "../given";
import { warmingOf } from "./baking";
import { bathOf } from "./bath";
import { aboveDrawing, chamberDrawing } from "./chamber";
import { curveDrawing } from "./curve";
import type { Drawing } from "./drawing";
import { loadDrawings, planned, week } from "./planned";
import { sawnDrawing } from "./sawn";

/** The drawings that help to see how a call's answer came about; none where there is nothing to draw. */
export function drawingsOf(contract: Contract, call: Call, row: number): Drawing[] {
  const plan = planned(call);
  // Its first week and load; the working turns to the others.
  if (plan) return [week(plan, 0), ...loadDrawings(plan, 0)];
  try {
    const read = valuesOf(contract, call.cells, row);
    const bath = bathOf(read);
    if (bath) return [chamberDrawing(bath, read.units), aboveDrawing(bath)].flatMap((drawing) => drawing ?? []);
    const warming = warmingOf(read);
    return warming ? [curveDrawing(warming, read.units), sawnDrawing(warming, read.units)] : [];
  } catch (trouble) {
    if (trouble instanceof Trouble) return [];
    throw trouble;
  }
}

import type { Contract } from "../../shared/contract";
import type { Call } from "../../shared/host";
import { Trouble } from "../../shared/outcome";
import { type Read, valuesOf } from "../given";
import { warmingOf } from "./baking";
import { bathOf } from "./bath";
import { aboveDrawing, chamberDrawing } from "./chamber";
import { curveDrawing } from "./curve";
import type { Drawing } from "./drawing";
import { sawnDrawing } from "./sawn";
import { daysOf, loadsOf, momentName, weekDrawing } from "./week";

/** A drawing, and what stands beneath it when it goes on from week to week. */
export interface Shown {
  readonly drawing: Drawing;
  readonly week?: { readonly now: number; readonly last: number };
  readonly loads?: readonly { readonly name: string; readonly pieces: string; readonly startBy: string; readonly done: string }[];
}

/** A value between 0 and 1 is a clock time, anything else an hour. */
const shareOfDay = (hour: number) => (hour < 1 ? hour : hour / 24);

function weekOf({ given }: Read, { answer }: Call, week: number): Shown[] {
  const { opens, closes, loadingMinutes } = given as { opens: number; closes: number; loadingMinutes: number };
  const loads = loadsOf(answer, loadingMinutes / 86_400);
  if (!loads.length) return [];
  const [first, last] = daysOf(loads);
  const from = first + 7 * week;
  const mine = loads.filter(({ startBy, done }) => done > from && startBy < from + 7);
  return [
    {
      drawing: weekDrawing(loads, from, shareOfDay(opens), shareOfDay(closes)),
      week: { now: week, last: Math.floor((last - first) / 7) },
      loads: mine.map(({ name, pieces, startBy, done }) => ({ name, pieces, startBy: momentName(startBy), done: momentName(done) })),
    },
  ];
}

/** The drawings that help to see how a call's answer came about; none where there is nothing to draw. */
export function drawingsOf(contract: Contract, call: Call, row: number, week = 0): Shown[] {
  try {
    const read = valuesOf(contract, call.cells, row);
    if (contract.name === "PLAN") return weekOf(read, call, week);
    const bath = bathOf(read);
    if (bath) return [chamberDrawing(bath, read.units), aboveDrawing(bath)].flatMap((drawing) => (drawing ? [{ drawing }] : []));
    const warming = warmingOf(read);
    return warming ? [{ drawing: curveDrawing(warming, read.units) }, { drawing: sawnDrawing(warming, read.units) }] : [];
  } catch (trouble) {
    if (trouble instanceof Trouble) return [];
    throw trouble;
  }
}

import { isFault } from "../../shared/outcome";
import type { Answers } from "./answers";
import type { Run } from "./schema";
import { rough, unitsOf } from "./steplines";

/** Inside of a round chamber, in the unit that resin is measured in. */
function chamberVolume({ chamber, height, system }: Run): number | undefined {
  if (typeof chamber !== "number") return undefined;
  return ((Math.PI / 4) * chamber ** 2 * height) / (system === "US" ? 57.75 : 1e6);
}

/** What the last two readings of a step say of a leak, in words; nothing before there are two. */
export function leakOf(run: Run, step: string, { ask }: Answers): string {
  const own = run.readings.filter((reading) => reading.step === step).slice(-2);
  if (own.length < 2) return "";
  const [before, after] = own;
  const minutes = (after.at - before.at) / 60_000;
  const volume = chamberVolume(run);
  if (volume === undefined || minutes <= 0) return "";
  const given = { volume, before: before.gauge, after: after.gauge, minutes, ...(run.pumpRate ? { rate: run.pumpRate } : {}) };
  const [lost, deepest] = ask("LEAK", given, run.shop)[0];
  if (isFault(lost)) return lost.message;
  const unit = unitsOf(run).pressure;
  const reach = typeof deepest === "number" ? ` Pump and leak together reach ${rough(deepest, 3)} ${unit}.` : "";
  return typeof lost === "number" ? `Loses ${rough(lost)} ${unit} a minute with the pump shut off.${reach}` : "";
}

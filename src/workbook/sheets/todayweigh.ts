import { bakeloss } from "../../resin/bakeloss";
import { fullness } from "../../resin/fullness";
import { weightgain } from "../../resin/weightgain";
import { ask, type Formula, formula, given } from "../formula";
import type { Kit } from "../kit";
import type { Page } from "../page";
import type { Ref } from "../place";
import { type Each, threeInputs, threeLine } from "./three";
import type { LoadOf } from "./todaypieces";

/** What the scale said of each load, and what comes of it. */
export function weighLines(page: Page, kit: Kit, volume: Each<Ref>, loads: Each<LoadOf>): void {
  const shown = (value: number) => (kit.demo ? [value] : undefined);
  const unit = "g";
  threeInputs(page, "minutes until the bubbling stopped", { unit: "min", note: "for the Run Log", most: 14400, values: shown(155) });
  const dry = threeInputs(page, "weight before, oven-dry", { unit, format: "0.0", values: shown(82.4) });
  const drained = threeInputs(page, "weight drained, not yet baked", { unit, format: "0.0", values: shown(156.9) });
  const cured = threeInputs(page, "weight cured and cool", { unit, format: "0.0", values: shown(149.2) });
  const gravity = (load: number) => formula`${dry[load]}/(${volume[load]}*${kit.by(16.387064, 1)})`;
  const results: [string, (load: number) => Formula, string, string][] = [
    [
      "weight gain",
      (load) => given([dry[load], cured[load]], ask(weightgain, { before: dry[load], cured: cured[load] })),
      "resin that stayed, for the weight of dry wood",
      "a weight is missing, or lighter than before",
    ],
    [
      "lost in the oven",
      (load) =>
        given([dry[load], drained[load], cured[load]], ask(bakeloss, { before: dry[load], drained: drained[load], cured: cured[load] })),
      "drips and vapor",
      "a weight is missing, or the weights are in the wrong order",
    ],
  ];
  const dense = threeLine(page, "how dense the wood is", (load) => given([dry[load], volume[load]], gravity(load)), {
    format: "0.00",
    good: "specific gravity of these pieces",
  });
  threeLine(
    page,
    "fullness of the pores",
    (load) =>
      given(
        [dry[load], drained[load], volume[load]],
        ask(fullness, { before: dry[load], drained: drained[load], solids: volume[load], gravity: dense[load] }),
      ),
    {
      format: "0%",
      look: "total",
      good: "goes into the Run Log for this wood",
      bad: "a weight is missing, or more resin than there is room for",
    },
  );
  for (const [label, made, good, bad] of results) threeLine(page, label, made, { format: "0%", look: "total", good, bad });
  threeLine(page, "fullness used in the plan", (load) => formula`IF(${loads[load].fullness}="","",${loads[load].fullness})`, {
    format: "0%",
    good: "first pieces: their wood in the Run Log, else My Shop",
  });
}

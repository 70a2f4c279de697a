import { bakeloss } from "../../resin/bakeloss";
import { fullness } from "../../resin/fullness";
import { weightgain } from "../../resin/weightgain";
import { ask, formula, given } from "../formula";
import type { Kit } from "../kit";
import { failed, type Page, verdict } from "../page";
import type { InChamber } from "./demochamber";
import type { Shown } from "./piece";
import type { Shop } from "./shop";

/** Boxes for what was weighed and timed, and what follows from it. */
export function reallyHappened(page: Page, kit: Kit, shop: Shop, { gravity }: Shown, { solids }: InChamber): void {
  const shown = <T>(value: T) => (kit.demo ? value : undefined);
  const weight = { from: 0, to: 1e6 };
  page.heading("What really happened", "", "", "");
  page.line({
    label: "minutes until the bubbling stopped",
    value: shown(155),
    input: { from: 0, to: 14400 },
    unit: "min",
    note: "for the Run Log",
  });
  const before = page.line({ label: "weight before, oven-dry", value: shown(82.4), input: weight, format: "0.0", unit: "g" });
  const drained = page.line({ label: "weight drained, not yet baked", value: shown(156.9), input: weight, format: "0.0", unit: "g" });
  const cured = page.line({ label: "weight cured and cool", value: shown(149.2), input: weight, format: "0.0", unit: "g" });
  const results = [
    [
      "weight gain",
      ask(weightgain, { before, cured }),
      "resin that stayed, for the weight of dry wood",
      "a weight is missing, or lighter than before",
    ],
    [
      "fullness of the pores",
      given([solids], ask(fullness, { before, drained, solids, gravity })),
      "this wood's own: into the Run Log, and into My Shop",
      "a weight is missing, or more resin than there is room for",
    ],
    [
      "lost in the oven",
      ask(bakeloss, { before, drained, cured }),
      "drips and vapour",
      "a weight is missing, or the weights are in the wrong order",
    ],
  ] as const;
  for (const [label, made, good, bad] of results) {
    const ref = page.line({ label, formula: made, format: "0%", look: "total" });
    page.put(ref.row, 3, { formula: verdict(ref, good, bad), look: "note" });
    page.alert("bad", ref, failed(ref));
  }
  page.line({
    label: "fullness that was reckoned with",
    formula: formula`${shop.holds("fullness")}`,
    format: "0%",
    note: "My Shop",
  });
}

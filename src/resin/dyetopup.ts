import { quantity } from "../../shared/argument";
import { define } from "../../shared/contract";
import { noAnswer, said } from "../../shared/outcome";
import { as } from "../../shared/quantity";
import { cell } from "../../shared/result";
import { unless } from "../../shared/twin";
import { dyeRate } from "./settings";

/** Dye that brings the resin on hand and what is added to a rate. Volumes in m³, rates volume to volume. */
export function dyeToAdd(onHand: number, itsRate: number, added: number, rate: number): number {
  const wanted = rate * (onHand + added);
  const there = itsRate * onHand;
  if (there <= wanted * (1 + 1e-9)) return Math.max(0, wanted - there);
  if (rate === 0) throw noAnswer`too strong already: clear resin cannot take all of the dye out`;
  const clear = there / rate - onHand;
  throw noAnswer`too strong already: it takes ${said("fluid", clear)} of clear resin to bring it down, ${said("fluid", clear - added)} more than you add`;
}

/** Dye powder that goes in with a top-up. */
export const dyetopup = define({
  name: "DYETOPUP",
  per: "piece",
  asks: "How much dye goes in with a top-up?",
  args: {
    onHand: quantity("fluid", "resin on hand", 1.5, [0, 1e6]),
    itsRate: quantity("strength", "dye rate of the resin on hand", 0.25, [0, 96]),
    added: quantity("fluid", "clear resin added", 2, [0, 1e6]),
    rate: dyeRate,
  },
  shop: {},
  returns: cell(quantity("powder", "dye to add", 0.5)),
  format: "0.00",
  equation: "{rate} × ({onHand} + {added}) − {itsRate} × {onHand}",
  source: "conservation of the dye; the dye rate: common practice, no source",
  accuracy: "exact for the rates given; wood takes dye and resin unevenly, so old resin may be off its rate: judge it by eye",
  cautions: ["resin", "dust"],
  worked: { typed: [1.5, 0.25, 2, 0.5], gives: 1.375 },
  twin: unless("{itsRate}*{onHand}>{rate}*({onHand}+{added})*(1+1E-9)", "MAX(0,{rate}*({onHand}+{added})-{itsRate}*{onHand})"),
  steps: ({ onHand, itsRate, added, rate }) => ({
    "dye needed in all": said("powder", rate * (onHand + added)),
    "dye already in it": said("powder", itsRate * onHand),
  }),
  run: ({ onHand, itsRate, added, rate }) => as(dyeToAdd(onHand, itsRate, added, rate)),
});

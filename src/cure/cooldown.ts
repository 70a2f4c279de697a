import { optional, quantity } from "../../shared/argument";
import { define } from "../../shared/contract";
import { badInput, said } from "../../shared/outcome";
import { as } from "../../shared/quantity";
import { cell } from "../../shared/result";
import { fullness } from "../resin/settings";
import { secondsTo } from "./block";
import { cured } from "./filled";
import { atBest, atWorst, type Doubt, type Oven, slabsOf, type Wood } from "./heating";
import { conductionSource } from "./ovenwords";
import { pieceArgs, refuseThick } from "./piece";
import { oven, room, thickest } from "./settings";

/** W/m²K that a bare piece gives off to still room air, convection and radiation together: from memory. */
const stillAir = 10;

/** 80 °F, or 10 °F above the room where that is more. */
export const coolEnough = (room: number): number => Math.max(((80 - 32) * 5) / 9, room + (10 * 5) / 9);

/** The piece in the room's air, its resin cured. */
export const coolingSlabs = (wood: Wood, doubt?: Doubt) => slabsOf(wood, stillAir, doubt, cured);

type Cooling = Wood & Pick<Oven, "oven" | "room"> & { to?: number };

function cooling(given: Cooling, doubt?: Doubt): number {
  const { oven, room, to = coolEnough(room) } = given;
  if (to <= room)
    throw badInput`temperature to cool to must be above the room: ${said("temperature", to)} is not above ${said("temperature", room)}`;
  return to >= oven ? 0 : secondsTo(coolingSlabs(given, doubt), (to - room) / (oven - room));
}

/** Minutes out of the oven until the core is cool enough to weigh, or to come near the resin. */
export const cooldown = define({
  name: "COOLDOWN",
  per: "piece",
  asks: "How long must it cool before I weigh it?",
  args: { ...pieceArgs, to: optional(quantity("temperature", "temperature to cool to", 80, [35, 300])) },
  shop: { oven, room, fullness, thickest },
  returns: cell(quantity("minutes", "minutes of cooling", 60)),
  format: "0",
  equation: "time for the core to cool from {oven} to {cool} in still air at {room}",
  source: `${conductionSource(cured)}; surface coefficient in still air 10 W/m²K, from memory`,
  accuracy: "for bare, spaced pieces in still air: a draft makes it shorter, foil or a pile longer",
  cautions: ["oven", "storage"],
  worked: { typed: [0.75, 0.75, 5, 0.4], gives: 35.17207020207439 },
  steps: ({ room, to = as(coolEnough(room)) }) => ({ cool: said("temperature", to) }),
  trust: (given) => [cooling(given, atBest), cooling(given, atWorst)],
  run: (given) => {
    refuseThick(given, given.thickest);
    return as(cooling(given));
  },
});

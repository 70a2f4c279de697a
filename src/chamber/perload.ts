import { count, optional } from "../../shared/argument";
import { define } from "../../shared/contract";
import { as } from "../../shared/quantity";
import { cell } from "../../shared/result";
import { gravityArg, middlingGravity } from "../wood/voids";
import { bathSettings, loadGiven, packed, pieceSides } from "./arrange";
import { heightArg } from "./headroom";
import { chamberArg } from "./section";

/** The largest count that ARRANGE accepts. */
export const perload = define({
  name: "PERLOAD",
  per: "call",
  asks: "How many pieces fit in one load?",
  args: { chamber: chamberArg, height: heightArg, ...pieceSides, gravity: optional(gravityArg, middlingGravity) },
  shop: bathSettings,
  returns: cell(count("pieces in one load", 34)),
  format: "0",
  equation: "the largest count with stack + {cover} ≤ {height} × (1 − {foamRoom}), upright or lying, in as many layers as it takes",
  source: `geometry: ${packed}`,
  accuracy: "as good as your measurements; by tilting pieces you may fit one or two more",
  cautions: ["chamber", "resin"],
  worked: { typed: [6, 10, 0.75, 0.75, 5], gives: 34 },
  run: (given) => as(loadGiven(given).most()),
});

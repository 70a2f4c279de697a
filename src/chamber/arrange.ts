import { count, optional, quantity } from "../../shared/argument";
import { define } from "../../shared/contract";
import { said } from "../../shared/outcome";
import { as, type Quantity } from "../../shared/quantity";
import { row } from "../../shared/result";
import { text } from "../../shared/words";
import { fullness, resinDensity } from "../resin/settings";
import { gravityArg, middlingGravity } from "../wood/voids";
import { stackArg } from "./fill";
import { heightArg } from "./headroom";
import type { Piece } from "./layers";
import { type Bath, load, mostPieces } from "./load";
import { areaOf, chamberArg, type Section } from "./section";
import { cover, foamRoom, gap, holdDown, leastCover } from "./settings";

const side = (label: string, example: number) => quantity("length", label, example, [0.01, 200]);

export const pieceSides = { thickness: side("thickness", 0.75), width: side("width", 0.75), length: side("length", 5) };

export const bathSettings = { cover, leastCover, foamRoom, gap, resinDensity, holdDown, fullness };

interface Given extends Piece, Bath {
  readonly chamber: Section;
  readonly height: number;
  readonly gravity: number;
}

export const loadGiven = (given: Given) => load(given.chamber, given.height, given, given.gravity, given);

export const packed =
  "pieces packed in rows, some turned a quarter, the best of several patterns; for up to 30 squares in a circle it fits at least 83 % of the published records (“Squares in Circles”) and never more";

/** How pieces go into the chamber: the way that needs least resin. */
export const arrange = define({
  name: "ARRANGE",
  per: "call",
  asks: "How do the pieces go into the chamber?",
  args: {
    chamber: chamberArg,
    height: heightArg,
    ...pieceSides,
    count: count("pieces", 12, [1, mostPieces]),
    gravity: optional(gravityArg, middlingGravity),
  },
  shop: bathSettings,
  returns: row({
    way: text("they go in", "lying"),
    layers: count("layers", 4),
    stack: stackArg,
    pour: quantity("fluid", "resin to pour", 1.55),
    add: quantity("fluid", "resin to add once the air is in", 0.1),
  }),
  format: { way: "General", layers: "0", stack: "0.00", pour: "0.00", add: "0.00" },
  equation:
    "of all ways with {stack} + {cover} ≤ {height} × (1 − {foamRoom}) the one that needs the least resin; to pour = {area} × ({stack} + {cover}) − {solids}; to add = {uptake} − {area} × ({cover} − {leastCover}), not under 0",
  source: `geometry: ${packed}; ballast by Archimedes in steel; cover: common practice, no source; least cover, foam room, gap and gravity 0.40 from memory`,
  accuracy:
    "as good as your measurements; by tilting pieces you may fit one or two more; how much resin the wood takes is a guess until you have weighed a run",
  cautions: ["chamber", "ballast", "resin"],
  worked: { typed: [6, 10, 0.75, 0.75, 5, 12], gives: ["lying", 4, 3, 1.2930014302455624, 0.014772169681483288] },
  steps: (given) => {
    const { perLayer, stack, solids, uptake, ballast, depth } = loadGiven(given).arrange(given.count);
    const area = areaOf(given.chamber);
    return {
      "pieces in a full layer": said("count", perLayer),
      area: said("area", area),
      stack: said("length", stack),
      ballast: said("weight", ballast),
      solids: said("volume", solids),
      uptake: said("fluid", uptake),
      "depth of resin at the most": said("length", depth),
      "depth allowed": said("length", given.height * (1 - given.foamRoom)),
      "as the air comes in the level falls by": said("length", uptake / area),
      ...(uptake / area > given.cover && { note: "that is more than the cover: have the resin to add ready beside the chamber" }),
    };
  },
  run: (given) => {
    const { way, layers, stack, pour, add } = loadGiven(given).arrange(given.count);
    return {
      way,
      layers: as<Quantity<"count">>(layers),
      stack: as<Quantity<"length">>(stack),
      pour: as<Quantity<"fluid">>(pour),
      add: as<Quantity<"fluid">>(add),
    };
  },
});

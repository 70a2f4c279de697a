import { count, optional, quantity } from "../../shared/argument";
import { define } from "../../shared/contract";
import { said } from "../../shared/outcome";
import { as, type Quantity } from "../../shared/quantity";
import { row } from "../../shared/result";
import { text } from "../../shared/words";
import { fullness } from "../resin/settings";
import { gravityArg, middlingGravity } from "../wood/voids";
import { stackArg } from "./fill";
import { heightArg } from "./headroom";
import type { Piece } from "./layers";
import { type Bath, load, mostPieces } from "./load";
import { areaOf, chamberArg, type Section } from "./section";
import { cover, foamRoom, gap, holdDown, resinDensity } from "./settings";

const side = (label: string, example: number) => quantity("length", label, example, [0.01, 200]);

export const pieceSides = { thickness: side("thickness", 0.75), width: side("width", 0.75), length: side("length", 5) };

export const bathSettings = { cover, foamRoom, gap, resinDensity, holdDown, fullness };

interface Given extends Piece, Bath {
  readonly chamber: Section;
  readonly height: number;
  readonly gravity: number;
}

export const loadGiven = (given: Given) => load(given.chamber, given.height, given, given.gravity, given);

export const packed =
  "pieces packed in rows of equal pitch with quarter turns at the sides, each arrangement of that kind looked at; up to 30 squares in a circle it holds at least 83 % of the published records (“Squares in Circles”) and never more";

/** How pieces go into the chamber: the way that needs least fluid. */
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
    way: text("how they go in: upright or lying", "lying"),
    layers: count("layers", 4),
    stack: stackArg,
    fluid: quantity("fluid", "fluid to pour", 1.55),
  }),
  format: { way: "General", layers: "0", stack: "0.00", fluid: "0.00" },
  equation:
    "the way with the least of {area} × ({stack} + {cover}) − {solids} + {uptake} of those with {stack} + {cover} + {uptake}/{area} ≤ {height} × (1 − {foamRoom})",
  source: `geometry: ${packed}; ballast by Archimedes in steel; cover: common practice, no source; foam room, gap and gravity 0.40 from memory`,
  accuracy: "as good as the measures taken; a patient hand may get a piece or two more in by tilting",
  cautions: ["chamber", "ballast", "resin"],
  worked: { typed: [6, 10, 0.75, 0.75, 5, 12], gives: ["lying", 4, 3, 1.5525730274794975] },
  steps: (given) => {
    const { perLayer, stack, solids, uptake, ballast, depth } = loadGiven(given).arrange(given.count);
    return {
      "pieces in a full layer": said("count", perLayer),
      area: said("area", areaOf(given.chamber)),
      stack: said("length", stack),
      ballast: said("weight", ballast),
      solids: said("volume", solids),
      uptake: said("fluid", uptake),
      "deepest fluid": said("length", depth),
      "depth allowed": said("length", given.height * (1 - given.foamRoom)),
    };
  },
  run: (given) => {
    const { way, layers, stack, fluid } = loadGiven(given).arrange(given.count);
    return { way, layers: as<Quantity<"count">>(layers), stack: as<Quantity<"length">>(stack), fluid: as<Quantity<"fluid">>(fluid) };
  },
});

import { said, sayIn } from "../../shared/outcome";
import type { Units } from "../../shared/unit";
import { loadGiven } from "../../src/chamber/arrange";
import { steel } from "../../src/chamber/ballast";
import { type Place, placesOf } from "../../src/chamber/blocks";
import { areaOf, type Section } from "../../src/chamber/section";
import type { Read } from "../given";

/** The contents of a chamber for a drawing, lengths in meters. */
export interface Bath {
  readonly section: Section;
  /** Inside height; undefined where unknown. */
  readonly height?: number;
  /** Least free height above the resin, for the foam. */
  readonly foam?: number;
  /** Depth of the resin at the start, with pieces and ballast in it. */
  readonly depth: number;
  /** The same once the wood has taken its fill. */
  readonly depthAfter?: number;
  readonly stack?: number;
  /** Thickness of the ballast, spread over the pieces as a plate. */
  readonly ballast?: number;
  /** The pieces of a layer seen from above, how many layers of them and how high each is. */
  readonly places?: readonly Place[];
  readonly layers?: number;
  readonly last?: number;
  /** Pieces and ballast as one block where no layer is known: their volume. */
  readonly solids?: number;
  readonly lines: readonly string[];
}

/** Thickness of ballast as a plate that covers most of the floor. */
export const plateOf = (mass: number, area: number) => mass / steel / (0.85 * area);

function loaded(given: any, units: Units, count?: number): Bath {
  const load = loadGiven(given);
  const pieces = count ?? load.most();
  const { stack, layers, layer, pour, add, solids, uptake, depth, ballast, perLayer, way } = load.arrange(pieces);
  const area = areaOf(given.chamber);
  return {
    section: given.chamber,
    height: given.height,
    foam: given.foamRoom * given.height,
    depth,
    depthAfter: Math.max(0, (pour + add + solids - uptake) / area),
    stack,
    layers,
    last: pieces - (layers - 1) * perLayer,
    places: placesOf(layer),
    ballast: plateOf(ballast, area),
    solids,
    lines: [
      `${pieces} pieces ${way}, ${layers === 1 ? "one layer" : `${layers} layers, ${perLayer} in a full one`}`,
      `resin to pour: ${sayIn(units, said("fluid", pour))}, to add once the air is in: ${sayIn(units, said("fluid", add))}, ballast: ${sayIn(units, said("weight", ballast))} of steel, drawn as a plate`,
    ],
  };
}

function poured(given: any): Bath {
  const area = areaOf(given.chamber);
  const { stack, cover, solids, uptake } = given;
  const covered = Math.max(stack + cover, solids / area);
  return { section: given.chamber, depth: covered + uptake / area, depthAfter: uptake > 0 ? covered : undefined, stack, solids, lines: [] };
}

const standing = (given: any): Bath => ({
  section: given.chamber,
  depth: (given.resin + given.solids) / areaOf(given.chamber),
  ...(given.height !== undefined && { height: given.height, foam: given.foamRoom * given.height }),
  lines: [`pieces and ballast under the resin: ${"solids" in given ? "counted in its depth" : "none"}`],
});

/** The bath that a call of a chamber function describes. */
export function bathOf({ contract, given, units }: Read): Bath | undefined {
  switch (contract.name) {
    case "ARRANGE":
      return loaded(given, units, given.count as number);
    case "PERLOAD":
      return loaded(given, units);
    case "FILL":
      return poured(given);
    case "FLUIDLEVEL":
    case "HEADROOM":
      return standing(given);
    default:
      return undefined;
  }
}

import { badInput, noAnswer } from "../../shared/outcome";
import { voidShare } from "../wood/voids";
import { allowance } from "./abreast";
import { ballastWeight, steel } from "./ballast";
import type { Layer } from "./blocks";
import { type Piece, type Way, waysOf } from "./layers";
import { misfit } from "./misfit";
import { needOf, toCover } from "./need";
import { areaOf, type Section } from "./section";

/** The settings of the shop that a load depends on, in SI numbers. */
export interface Bath {
  readonly cover: number;
  readonly leastCover: number;
  readonly foamRoom: number;
  readonly gap: number;
  readonly resinDensity: number;
  readonly holdDown: number;
  readonly fullness: number;
}

/** Pieces of one size in the tub, the way that needs least resin. */
export interface Arrangement {
  readonly way: Way["way"];
  readonly layers: number;
  readonly perLayer: number;
  /** Height of the stack of pieces. */
  readonly stack: number;
  /** Resin that covers them while the vacuum is on. */
  readonly pour: number;
  /** Resin to add once the air is in, so that the least cover is left in the end. */
  readonly add: number;
  readonly solids: number;
  readonly uptake: number;
  /** Ballast that holds them under, kg of steel. */
  readonly ballast: number;
  /** Depth while the vacuum is on: its most. */
  readonly depth: number;
  readonly layer: Layer;
}

/** Most pieces in one load that are counted. */
export const mostPieces = 1e6;

const waterDensity = 1000;

/** What one oven-dry piece brings into the tub with the ballast that holds it under: m³ and kg of steel. */
export function inBath(volume: number, gravity: number, { resinDensity, holdDown }: Pick<Bath, "resinDensity" | "holdDown">) {
  const ballast = ballastWeight(volume, gravity * waterDensity * volume, steel, resinDensity, holdDown);
  return { ballast, solids: volume + ballast / steel };
}

/** Height that is left for pieces: foam and cover stand above them. */
export const heightForPieces = (height: number, { foamRoom, cover }: Pick<Bath, "foamRoom" | "cover">): number =>
  height * (1 - foamRoom) * (1 + allowance) - cover;

/**
 * One size of oven-dry pieces in one tub: `arrange` gives a count's arrangement, `most` the largest count that `arrange`
 * accepts. The layers are packed once, so ask as often as needed. Both throw Trouble where there is no answer.
 */
export function load(chamber: Section, height: number, piece: Piece, gravity: number, bath: Bath) {
  const { cover, leastCover, foamRoom, gap, fullness } = bath;
  const area = areaOf(chamber);
  const volume = piece.thickness * piece.width * piece.length;
  const { ballast, solids } = inBath(volume, gravity, bath);
  const uptake = volume * Math.max(0, voidShare(gravity, 0)) * fullness;
  const open = waysOf(chamber, gap, piece).filter(({ layer }) => layer.pieces > 0);
  const room = heightForPieces(height, bath);

  const layersOf = (way: Way, count: number) => Math.ceil(count / way.layer.pieces);
  const mostOf = (way: Way) => Math.max(0, Math.floor((room / way.height) * (1 + allowance))) * way.layer.pieces;

  const largest = () => Math.max(0, ...open.map(mostOf));
  const none = () =>
    misfit({ chamber, height, piece, gap, foamRoom, cover, needs: open.map((way) => ({ way, depth: way.height + cover })) });

  const most = (): number => {
    const count = largest();
    if (count === 0) throw none();
    if (count >= mostPieces) throw badInput`${mostPieces} pieces or more would fit: check the units of the piece and the chamber`;
    return count;
  };

  const arrange = (count: number): Arrangement => {
    const ways = open.filter((way) => mostOf(way) >= count);
    if (ways.length === 0) {
      const would = largest();
      throw would > 0 ? noAnswer`${count} pieces do not fit in one load: ${would} would` : none().about("not one piece fits: ");
    }
    // Solids and uptake are the same in every way, so the lowest stack needs least resin; of equals the first.
    const stackOf = (way: Way) => layersOf(way, count) * way.height;
    const least = ways.reduce((a, b) => (stackOf(b) < stackOf(a) - allowance * height ? b : a));
    const wet = { area, stack: stackOf(least), solids: count * solids, uptake: count * uptake };
    const pour = toCover(wet, cover);
    return {
      way: least.way,
      layers: layersOf(least, count),
      perLayer: least.layer.pieces,
      stack: wet.stack,
      pour,
      add: Math.max(0, needOf(wet, leastCover) - pour),
      solids: wet.solids,
      uptake: wet.uptake,
      ballast: count * ballast,
      depth: (pour + wet.solids) / area,
      layer: least.layer,
    };
  };

  return { most, arrange };
}

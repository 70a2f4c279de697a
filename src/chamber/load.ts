import { badInput, noAnswer } from "../../shared/outcome";
import { voidShare } from "../wood/voids";
import { allowance } from "./abreast";
import { ballastWeight, steel } from "./ballast";
import type { Layer } from "./blocks";
import { type Piece, type Way, waysOf } from "./layers";
import { misfit } from "./misfit";
import { areaOf, type Section } from "./section";

/** The settings of the shop that a load depends on, in SI numbers. */
export interface Bath {
  readonly cover: number;
  readonly foamRoom: number;
  readonly gap: number;
  readonly resinDensity: number;
  readonly holdDown: number;
  readonly fullness: number;
}

/** Pieces in the chamber, the way that needs least fluid. */
export interface Arrangement {
  readonly way: Way["way"];
  readonly layers: number;
  readonly perLayer: number;
  /** Height of the stack of pieces. */
  readonly stack: number;
  /** Fluid to pour, so that they stay covered to the end. */
  readonly fluid: number;
  readonly solids: number;
  readonly uptake: number;
  /** Ballast that holds them under, kg of steel. */
  readonly ballast: number;
  /** Depth at the start, nothing taken up yet: its most. */
  readonly depth: number;
  readonly layer: Layer;
}

/** Most pieces that one load is counted to. */
export const mostPieces = 1e6;

const waterDensity = 1000;

/**
 * One size of oven-dry pieces in one chamber: `arrange` gives a count's arrangement, `most` the largest count that
 * `arrange` accepts. The layers are packed once, so ask as often as needed. Both throw Trouble where there is no answer.
 */
export function load(chamber: Section, height: number, piece: Piece, gravity: number, bath: Bath) {
  const { cover, foamRoom, gap, resinDensity, holdDown, fullness } = bath;
  const area = areaOf(chamber);
  const volume = piece.thickness * piece.width * piece.length;
  const ballast = ballastWeight(volume, gravity * waterDensity * volume, steel, resinDensity, holdDown);
  const solids = volume + ballast / steel;
  const uptake = volume * Math.max(0, voidShare(gravity, 0)) * fullness;
  const ways = waysOf(chamber, gap, piece);
  const open = ways.filter(({ layer }) => layer.pieces > 0);
  const limit = height * (1 - foamRoom) * (1 + allowance);

  const layersOf = (way: Way, count: number) => Math.ceil(count / way.layer.pieces);
  /** Where ballast and pieces fill more than stack and cover, the fluid stands as high as they make it. */
  const covered = (way: Way, count: number) => Math.max(layersOf(way, count) * way.height + cover, (count * solids) / area);
  const depth = (way: Way, count: number) => covered(way, count) + (count * uptake) / area;
  const accepts = (way: Way, count: number) => depth(way, count) <= limit;

  /** Pieces that so many layers hold, with the fluid that they will take up standing above them. */
  const inLayers = (way: Way, layers: number): number => {
    const left = limit - cover - layers * way.height;
    if (layers < 1 || left < 0) return 0;
    const wet = uptake > 0 ? (left * area) / uptake : Number.POSITIVE_INFINITY;
    return Math.min(layers * way.layer.pieces, Math.floor(wet), Math.floor((limit * area) / (solids + uptake)));
  };

  const mostOf = (way: Way): number => {
    // More layers hold more pieces and leave less height for what these take up: the best is where the two meet.
    const meet = Math.floor((limit - cover) / (way.height + (way.layer.pieces * uptake) / area));
    let count = Math.max(inLayers(way, meet), inLayers(way, meet + 1));
    // `accepts` has the last word, or rounding might let the two disagree by a piece.
    while (count > 0 && !accepts(way, count)) count--;
    while (count < mostPieces && accepts(way, count + 1)) count++;
    return count;
  };

  const largest = () => Math.max(0, ...open.map(mostOf));
  const none = () => misfit({ chamber, height, piece, gap, foamRoom, cover, needs: open.map((way) => ({ way, depth: depth(way, 1) })) });

  const most = (): number => {
    const count = largest();
    if (count === 0) throw none();
    if (count >= mostPieces) throw badInput`${mostPieces} pieces and more would go in: check the units of piece and chamber`;
    return count;
  };

  const arrange = (count: number): Arrangement => {
    const ways = open.filter((way) => accepts(way, count));
    if (ways.length === 0) {
      const would = largest();
      throw would > 0 ? noAnswer`${count} pieces do not fit in one load: ${would} would` : none().about("not one piece fits: ");
    }
    // Solids and uptake are the same in every way, so the lowest stack needs least fluid; of equals the first.
    const least = ways.reduce((a, b) => (covered(b, count) < covered(a, count) - allowance * height ? b : a));
    const layers = layersOf(least, count);
    return {
      way: least.way,
      layers,
      perLayer: least.layer.pieces,
      stack: layers * least.height,
      fluid: Math.max(0, area * (layers * least.height + cover) - count * solids) + count * uptake,
      solids: count * solids,
      uptake: count * uptake,
      ballast: count * ballast,
      depth: depth(least, count),
      layer: least.layer,
    };
  };

  return { most, arrange };
}

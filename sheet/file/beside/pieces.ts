import type { Beside } from "./beside";
import { charts } from "./charts";
import { cursor } from "./cursor";
import { documents } from "./documents";
import { links } from "./links";
import { looks } from "./looks";
import { notes } from "./notes";
import type { FileMade, FileRead, Joining, Piece } from "./piece";
import { pivots } from "./pivots";
import { print } from "./print";
import { properties } from "./properties";
import { rules } from "./rules";
import { sizes } from "./sizes";
import { tables } from "./tables";
import { validations } from "./validations";

/** All that is carried past the engine, in the order in which it is written. */
export const pieces: readonly Piece[] = [
  charts,
  rules,
  validations,
  sizes,
  links,
  notes,
  print,
  tables,
  cursor,
  pivots,
  looks,
  properties,
  documents,
];

const keptIn = (beside: Beside, { name }: Piece): unknown => beside[name as keyof Beside];

const collected = (keep: (piece: Piece) => unknown): Beside =>
  Object.fromEntries(
    pieces.map((piece) => [piece.name, keep(piece)] as const).filter(([, kept]) => kept !== undefined),
  ) as unknown as Beside;

export const readBeside = (file: FileRead): Beside => collected(({ read }) => read?.(file));

export function writeBeside(file: FileMade, beside: Beside): void {
  for (const piece of pieces) piece.write?.(file, keptIn(beside, piece));
}

export const joinBeside = (own: Beside, from: Beside, joining: Joining): Beside =>
  collected((piece) => {
    const [mine, theirs] = [keptIn(own, piece), keptIn(from, piece)];
    return piece.joined && theirs !== undefined ? piece.joined(mine, theirs, joining) : mine;
  });

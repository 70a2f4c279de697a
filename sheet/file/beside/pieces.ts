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
import type { Beside } from "./workbook";

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

type Kept = Readonly<Record<string, unknown>>;

const collected = (keep: (piece: Piece) => unknown): Kept =>
  Object.fromEntries(pieces.map((piece) => [piece.name, keep(piece)] as const).filter(([, kept]) => kept !== undefined));

export const readBeside = (file: FileRead): Beside => collected(({ read }) => read?.(file)) as unknown as Beside;

export function writeBeside(file: FileMade, beside: Beside): void {
  for (const { name, write } of pieces) write?.(file, (beside as unknown as Kept)[name]);
}

export const joinBeside = (own: Beside, from: Beside, joining: Joining): Beside =>
  collected(({ name, joined }) => {
    const [mine, theirs] = [own, from].map((beside) => (beside as unknown as Kept)[name]);
    return joined && theirs !== undefined ? joined(mine, theirs, joining) : mine;
  }) as unknown as Beside;

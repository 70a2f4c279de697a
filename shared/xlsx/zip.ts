import { zipSync } from "fflate";
import type { Parts } from "./unzip";

/** The earliest moment that a package can tell: a file made twice is the same file. */
const mtime = new Date(1980, 0, 1);

/** Packs parts in their order; level 0 leaves them as large as they are. */
export const zipped = (parts: Parts, level: 0 | 6 | 9 = 6): Uint8Array =>
  zipSync(Object.fromEntries([...parts].map(([path, bytes]) => [path, [bytes, { mtime, level }]])));

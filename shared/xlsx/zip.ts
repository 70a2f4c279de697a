import { zipSync } from "fflate";
import type { Parts } from "./unzip";

/** The earliest moment that a package can tell: a file made twice is the same file. */
const mtime = new Date(1980, 0, 1);

/** Packs parts in their order. */
export const zipped = (parts: Parts): Uint8Array =>
  zipSync(Object.fromEntries([...parts].map(([path, bytes]) => [path, [bytes, { mtime }]])));

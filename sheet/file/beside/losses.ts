import { decoded } from "../../../shared/xlsx/xml";
import type { Loss } from "./piece";

type Test = Loss[1];

/** Ways to see that a file holds something: in a sheet's part, in a part of its own, within parts of a name. */

export const sheetHas =
  (pattern: RegExp): Test =>
  (_, { sheets }) =>
    sheets.some(({ shell }) => pattern.test(shell));

export const hasPart =
  (pattern: RegExp): Test =>
  ({ parts }) =>
    [...parts.keys()].some((path) => pattern.test(path));

export const within =
  (place: RegExp, test: (xml: string) => boolean): Test =>
  ({ parts }) =>
    [...parts].some(([path, bytes]) => place.test(path) && test(decoded(bytes)));

export const holds = (place: RegExp, pattern: RegExp): Test => within(place, (xml) => pattern.test(xml));

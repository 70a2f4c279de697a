import type { SVGTemplateResult } from "lit";
import { fromInternal, type Units } from "../../shared/unit";
import type { Kind } from "../../shared/unittable";

/** A picture to scale, its text alternative, and the meaning of its colors. */
export interface Drawing {
  readonly title: string;
  readonly picture: SVGTemplateResult;
  readonly width: number;
  readonly height: number;
  readonly says: string;
  readonly legend: readonly (readonly [mark: string, words: string, letter?: string])[];
}

/** Drawings are this many units wide; a unit is a pixel in a pane of the least width. */
export const paper = 280;

/** An amount, rounded to what a person can measure. */
export function measured(units: Units, kind: Kind, value: number, places: number): string {
  const unit = units[kind];
  return `${Number(fromInternal(value, unit).toFixed(places))} ${unit.name}`;
}

/** A number as a path writes it. */
export const px = (n: number): string => n.toFixed(1);

export const lineThrough = (points: readonly (readonly [number, number])[]): string =>
  points.map(([x, y], i) => `${i ? "L" : "M"}${px(x)} ${px(y)}`).join("");

/** A round step of an axis, 1, 2 or 5 times a power of ten, that gives about so many ticks. */
export function ticks(from: number, to: number, about: number): number[] {
  const raw = (to - from) / about;
  const power = 10 ** Math.floor(Math.log10(raw));
  const step = [1, 2, 5, 10].map((n) => n * power).find((n) => n >= raw * 0.999) ?? raw;
  const first = Math.ceil(from / step - 1e-9);
  return Array.from({ length: Math.max(0, Math.floor(to / step + 1e-9) - first + 1) }, (_, i) => (first + i) * step);
}

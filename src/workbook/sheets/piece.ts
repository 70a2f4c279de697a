import type { Formula } from "../formula";
import type { Ref } from "../place";

/** The piece that the demo shows, and how many of it. */
export interface Shown {
  readonly start: Ref;
  readonly wood: Ref;
  readonly thickness: Ref;
  readonly width: Ref;
  readonly length: Ref;
  readonly gravity: Ref;
  readonly volume: Ref;
  readonly dryWeight: Ref;
  readonly count: Ref;
  /** The bake with its likely range, in words. */
  readonly bake: Formula;
}

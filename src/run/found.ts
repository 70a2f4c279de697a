import type { Run } from "./schema";

/** What a run is worked out from. */
export type Given = Pick<Run, "system" | "shop" | "chamber" | "height" | "pumpRate" | "loads" | "together">;

export interface Found {
  readonly facts: Record<string, number | string>;
  readonly faults: Record<string, string>;
}

import type { Block } from "../../../shared/host";
import { serialOf } from "../hours";
import type { Run } from "../schema";
import { unitsOf } from "../steplines";
import { dated, loadsOf, mixed, rounded, takenBy } from "./amounts";
import { nextRows, rowAt } from "./freerows";
import type { Writing } from "./writing";

export function resinRow(run: Run, resin: Block): Writing {
  const { mix, dye, isFresh } = mixed(run);
  const rows = nextRows(resin);
  const old = isFresh ? rows.shift() : undefined;
  const [row] = rows;
  if (row === undefined) return { blocks: [], entries: [], missing: ["The Resin Book is full: insert rows at its end first."] };
  const taken = loadsOf(run).map((load) => takenBy(run, load));
  if (taken.some((one) => one === undefined))
    return {
      blocks: [],
      entries: [],
      missing: [
        "Without weights nobody knows how much resin this run took, so nothing goes into the Resin Book. Next time weigh the pieces dry and drained.",
      ],
    };
  const amount = rounded(
    taken.reduce((sum, one) => sum + one!.amount, 0),
    3,
  );
  const added = rounded(run.entries.mixed ?? mix ?? 0);
  const dyed = run.color === "clear" ? 0 : rounded(run.entries.dyed ?? dye ?? 0);
  const day = Math.floor(serialOf(dated(run), run.offset));
  const { fluid, powder } = unitsOf(run);
  const how = taken.every((one) => one!.weighed) ? "by weight" : "as worked out, not weighed";
  return {
    blocks: [
      ...(old === undefined ? [] : [rowAt(resin, old, [day, null, null, "emptied"])]),
      rowAt(resin, row, [day, added, dyed, amount]),
    ],
    entries: [
      {
        sheet: "Resin Book",
        words: [
          ...(old === undefined ? [] : ["the resin that had expired: emptied. Dispose of it, and do not pour it back"]),
          `${added} ${fluid} mixed with ${dyed} ${powder} of dye; ${amount} ${fluid} taken up, ${how}`,
        ],
      },
    ],
    missing: [],
  };
}

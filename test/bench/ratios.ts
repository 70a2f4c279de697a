import { type ChildProcess, fork } from "node:child_process";
import { catalogue } from "../../src/catalogue";

export interface Times {
  readonly name: string;
  /** Milliseconds a call. */
  readonly ours: number;
  readonly bare: number;
}

/** Each side is a process of its own: an engine that has met one side's objects in a formula is slower on the other's. */
const start = (side: "ours" | "bare"): ChildProcess => fork(require.resolve("./side.ts"), [side]);

const median = (side: ChildProcess, index: number): Promise<number> =>
  new Promise((resolve, reject) => {
    const gone = () => reject(new Error("a side of the comparison ended early: it says above why"));
    side.once("exit", gone);
    side.once("message", (milliseconds) => {
      side.off("exit", gone);
      resolve(milliseconds as number);
    });
    side.send(index);
  });

const rounds = 6;

/** The best medians of rounds taken in turn: what else the machine does only ever adds, and meets both sides alike. */
export async function times(): Promise<Times[]> {
  const [ours, bare] = [start("ours"), start("bare")];
  try {
    const best = catalogue
      .filter((contract) => contract.per === "piece")
      .map(({ name }) => ({ name, ours: Number.POSITIVE_INFINITY, bare: Number.POSITIVE_INFINITY }));
    for (let round = 0; round < rounds; round++)
      for (const [index, found] of best.entries()) {
        found.ours = Math.min(found.ours, await median(ours, index));
        found.bare = Math.min(found.bare, await median(bare, index));
      }
    return best;
  } finally {
    ours.kill();
    bare.kill();
  }
}

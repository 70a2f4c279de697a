import { Bench } from "tinybench";
import { isFault } from "../../shared/outcome";
import { call, catalogue } from "../../src/catalogue";
import { bareMoisture, borderLoop, columnsOf } from "./border";
import budget from "./budget.json";

/** Prints milliseconds a call for every per-piece function, ours or as a bare loop: what bench compares. */

const contracts = catalogue.filter((contract) => contract.per === "piece");

function callOf(contract: (typeof contracts)[number], side: string): () => unknown {
  const columns = columnsOf(contract, budget.rows);
  if (side === "bare") return contract.name === "MOISTURE" ? () => bareMoisture(columns[0], columns[1]) : borderLoop(contract, columns);
  const ours = () => call(contract, columns as never);
  const fault = ours().flat().find(isFault);
  if (fault) throw new Error(`${contract.name} is measured on rows that it refuses: ${fault.message}`);
  return ours;
}

/** The best median of a few rounds, since another program's work only ever adds. */
async function median(what: string, side: () => unknown): Promise<number> {
  let best = Number.POSITIVE_INFINITY;
  for (let round = 0; round < 3; round++) {
    const bench = new Bench({ time: 120, iterations: 10, warmupTime: 40, warmupIterations: 3 });
    bench.add(what, side);
    const [{ result }] = await bench.run();
    if (result.state !== "completed") throw new Error(`${what}: ${result.state}`);
    best = Math.min(best, result.latency.p50);
  }
  return best;
}

async function main(): Promise<void> {
  const found: Record<string, number> = {};
  for (const contract of contracts) found[contract.name] = await median(contract.name, callOf(contract, process.argv[2]));
  console.log(JSON.stringify(found));
}

main();

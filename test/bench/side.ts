import { Bench } from "tinybench";
import { isFault } from "../../shared/outcome";
import { call, catalogue } from "../../src/catalogue";
import { bareMoisture, borderLoop, columnsOf } from "./border";
import budget from "./budget.json";

/** One side of the comparison, ours or the bare loops, as a process that measures a function each time it is asked to. */

const [side] = process.argv.slice(2);
const contracts = catalogue.filter((contract) => contract.per === "piece");

function callOf(contract: (typeof contracts)[number]): () => unknown {
  const columns = columnsOf(contract, budget.rows);
  if (side === "bare") return contract.name === "MOISTURE" ? () => bareMoisture(columns[0], columns[1]) : borderLoop(contract, columns);
  const ours = () => call(contract, columns as never);
  const fault = ours().flat().find(isFault);
  if (fault) throw new Error(`${contract.name} is measured on rows that it refuses: ${fault.message}`);
  return ours;
}

const calls = contracts.map(callOf);

/** The median of a call, in milliseconds. */
async function median(index: number): Promise<number> {
  const bench = new Bench({ time: 40, iterations: 5, warmupTime: 20, warmupIterations: 3 });
  bench.add(contracts[index].name, calls[index]);
  const [{ result }] = await bench.run();
  if (result.state !== "completed") throw new Error(`${contracts[index].name}: ${result.state}`);
  return result.latency.p50;
}

process.on("message", async (index: number) => process.send?.(await median(index)));

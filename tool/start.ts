import { dist, freshen } from "./fresh";
import { portOf } from "./port";
import { serve } from "./serve";

/** `npm start`: builds what has changed, serves the page to this machine, and says where. */
async function start(): Promise<void> {
  const port = portOf(process.argv.slice(2), process.env.PORT);
  await freshen();
  const served = await serve(dist, { port });
  console.log(`Porewise is at ${served.address} (Ctrl-C stops it)`);
  console.log("Try: change a weight on the sheet Blanks, or type =PORE.FILL(6,5,104) into an empty cell.");
  const stop = () => void served.close().then(() => process.exit(0));
  process.once("SIGINT", stop);
  process.once("SIGTERM", stop);
}

start().catch((error: unknown) => {
  console.error(error instanceof Error ? error.message : error);
  process.exit(1);
});

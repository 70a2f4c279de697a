import { spawnSync } from "node:child_process";
import { join } from "node:path";
import { certificate } from "./certificate";
import { dist, freshen } from "./fresh";
import { development } from "./manifest";
import { serve } from "./serve";

/** `npm run excel`: serves the add-in over https at the address that manifest.xml names, and starts Excel with it where there is one. */

const root = join(__dirname, "..");
const manifest = join(root, "manifest.xml");
const port = Number(new URL(development).port);

/** The vendor's own tool puts a manifest into Excel; it is large, so that it is fetched only when it is wanted. */
const debugging = "office-addin-debugging@7";

/** Run in the folder of the manifest: on Windows a shell takes these apart at spaces, and a path may have some. */
export const sideloading = (act: "start" | "stop"): string[] => [
  debugging,
  act,
  "manifest.xml",
  ...(act === "start" ? ["desktop", "--app", "excel", "--no-debug", "--no-live-reload"] : []),
];

function sideloaded(): boolean {
  if (process.platform !== "win32" && process.platform !== "darwin") return false;
  console.log("Starting Excel with the add-in. The first time this fetches the tool that does it.");
  return (
    spawnSync("npx", ["--yes", ...sideloading("start")], { cwd: root, stdio: "inherit", shell: process.platform === "win32" }).status === 0
  );
}

/** What a person does where Excel did not start by itself. */
export const byHand = (untrusted?: string): string =>
  [
    "To use it in Excel on the web, in a browser on this machine:",
    ...(untrusted
      ? [
          `  1. Open ${development}/taskpane.html. The browser does not know the certificate: tell it to go on, or import`,
          `     ${untrusted} under its trusted authorities.`,
        ]
      : [`  1. Open ${development}/taskpane.html: the pane must show, without a warning.`]),
    "  2. Open a workbook in Excel on the web. Home, Add-ins, More Add-ins, My Add-ins, Upload My Add-in.",
    `  3. Choose ${manifest}`,
    "  4. Type =PORE.VERSION() in a cell.",
  ].join("\n");

async function main(): Promise<void> {
  await freshen();
  const { untrusted, ...secure } = await certificate(join(root, ".cache/certificate"));
  const served = await serve(dist, { port, tries: 1, guest: "Excel", secure }).catch((error: NodeJS.ErrnoException) => {
    if (error.code === "EADDRINUSE") throw new Error(`Port ${port} is taken, and manifest.xml names it: stop what is running there.`);
    throw error;
  });
  console.log(`The add-in is at ${served.address} (Ctrl-C stops it)`);
  if (sideloaded()) console.log(`Type =PORE.VERSION() in a cell. To take it out of Excel again: npx ${sideloading("stop").join(" ")}`);
  else console.log(byHand(untrusted));
  const stop = () => void served.close().then(() => process.exit(0));
  process.once("SIGINT", stop);
  process.once("SIGTERM", stop);
}

if (require.main === module)
  main().catch((error: unknown) => {
    console.error(error instanceof Error ? error.message : error);
    process.exit(1);
  });

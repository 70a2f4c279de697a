import { spawn } from "node:child_process";
import { cpSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { createServer, type ServerResponse } from "node:http";
import { join, sep } from "node:path";
import { watch } from "chokidar";
import { firstFile } from "../sheet/page/first";
import { folder as workbookFolder } from "../src/workbook/choice";
import { bundled } from "./bundle";
import { files } from "./files";
import { dist, freshen } from "./fresh";
import { buildScripts } from "./page";
import { portOf } from "./port";

/** `npm run dev`: serves the page, builds page and pane again whenever a source changes, and reloads whoever looks at them. */

const root = join(__dirname, "..");
const folder = join(root, ".cache/dev");
const watched = ["shared", "src", "taskpane", "sheet"];
/** Sources of the template's files, which take as long as a whole build. */
const isTemplate = (path: string): boolean => path.startsWith(`src${sep}workbook`);

const lookers = new Set<ServerResponse>();
const reload = (): void => {
  for (const looker of lookers) looker.write("data: changed\n\n");
};

async function rebuild(): Promise<void> {
  await buildScripts(folder);
  for (const [name, bytes] of await bundled("taskpane.js")) writeFileSync(join(folder, name), bytes);
  cpSync(join(root, "taskpane/taskpane.css"), join(folder, "taskpane.css"));
  const page = join(folder, "index.html");
  writeFileSync(page, readFileSync(page, "utf8").replace("</head>", '<script src="reload.js"></script></head>'));
}

function renewTemplate(): Promise<void> {
  return new Promise((resolve) => {
    const child = spawn(process.execPath, ["--import", "tsx", "tool/fresh.ts"], { cwd: root, stdio: ["ignore", "ignore", "inherit"] });
    child.on("close", (code) => {
      if (code === 0) for (const name of [firstFile, workbookFolder]) cpSync(join(dist, name), join(folder, name), { recursive: true });
      resolve();
    });
  });
}

/** One build at a time; what changes meanwhile is built after it. */
function builder(): (path: string) => void {
  const changed = new Set<string>();
  let busy = false;
  const build = async (): Promise<void> => {
    busy = true;
    while (changed.size) {
      const paths = [...changed];
      changed.clear();
      try {
        await rebuild();
        reload();
        console.log(`built again: ${paths.join(", ")}`);
        if (paths.some(isTemplate)) await renewTemplate().then(reload);
      } catch (error) {
        // esbuild has already printed the errors.
        console.error(error instanceof Error ? error.message.split("\n")[0] : error);
      }
    }
    busy = false;
  };
  return (path) => {
    changed.add(path);
    // An editor writes a file in several steps.
    if (!busy) setTimeout(() => void (busy || build()), 100);
  };
}

async function dev(): Promise<void> {
  const port = portOf(process.argv.slice(2), process.env.PORT);
  await freshen();
  rmSync(folder, { recursive: true, force: true });
  cpSync(dist, folder, { recursive: true });
  // A page that works without a network would show what it kept, not what has changed.
  rmSync(join(folder, "offline.js"), { force: true });
  writeFileSync(join(folder, "reload.js"), 'new EventSource("changes").onmessage = () => location.reload();\n');
  await rebuild();
  const handOut = files(folder);
  const server = createServer((request, response) => {
    if (request.url !== "/changes") return void handOut(request, response);
    response.writeHead(200, { "Content-Type": "text/event-stream", "Cache-Control": "no-store" });
    // Sent at once: the browser opens a stream of events only when it has the headers.
    response.flushHeaders();
    lookers.add(response);
    response.on("close", () => lookers.delete(response));
  });
  server.on("error", (error) => {
    console.error(error.message);
    process.exit(1);
  });
  server.listen(port, "127.0.0.1", () => {
    const { port: taken } = server.address() as { port: number };
    const changed = builder();
    watch(watched, { cwd: root, ignoreInitial: true })
      .on("all", (_, path) => changed(path))
      .on("ready", () => console.log(`Porewise is at http://127.0.0.1:${taken}/ and follows its sources (Ctrl-C stops it)`));
  });
}

dev().catch((error: unknown) => {
  console.error(error instanceof Error ? error.message : error);
  process.exit(1);
});

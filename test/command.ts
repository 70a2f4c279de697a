import { spawnSync } from "node:child_process";
import { basename, join } from "node:path";
import { buildSync } from "esbuild";

const root = join(__dirname, "..");

/** A command of ours, bundled once without its packages: Node starts it in a third of the time that tsx takes. */
export function command(entry: string) {
  const outfile = join(root, `.cache/commands/${basename(entry, ".ts")}-${process.pid}.cjs`);
  buildSync({ entryPoints: [join(root, entry)], outfile, bundle: true, platform: "node", packages: "external", logLevel: "silent" });
  return (...args: readonly string[]) => spawnSync(process.execPath, [outfile, ...args], { cwd: root, encoding: "utf8" });
}

import { createHash } from "node:crypto";
import { readdirSync, readFileSync, statSync, writeFileSync } from "node:fs";
import { join, relative, sep } from "node:path";
import { build } from "esbuild";
import { noting } from "./shipped";

const root = join(__dirname, "..");
const worker = "offline.js";

/** What only Excel or a reader of licenses asks for. */
const aside = /^(functions\.js(on)?|taskpane\.html|NOTICES\.txt|offline\.js)|LICENSE|\.md$/;

const filesIn = (folder: string): string[] =>
  readdirSync(folder).flatMap((name) => {
    const path = join(folder, name);
    return statSync(path).isDirectory() ? filesIn(path) : [path];
  });

/** Writes the service worker of a built page: it knows every file by name, and its version changes with any of them. */
export async function buildOffline(outDir: string): Promise<void> {
  const files = filesIn(outDir)
    .map((path) => relative(outDir, path).split(sep).join("/"))
    .filter((path) => !aside.test(path))
    .sort();
  const hash = createHash("sha256");
  for (const path of files) hash.update(path).update(readFileSync(join(outDir, path)));
  const { outputFiles } = await build({
    entryPoints: [join(root, "sheet/offline/offline.ts")],
    bundle: true,
    minify: true,
    format: "iife",
    target: "es2022",
    define: { version: JSON.stringify(hash.digest("hex").slice(0, 16)), files: JSON.stringify(["./", ...files]) },
    plugins: [noting],
    write: false,
  });
  writeFileSync(join(outDir, worker), outputFiles[0].contents);
}

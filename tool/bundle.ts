import { basename, join } from "node:path";
import { type BuildOptions, build } from "esbuild";
import { minify } from "terser";
import { noting } from "./shipped";
import { slimFunctions, slimPane } from "./slim";

const root = join(__dirname, "..");

/** What Excel loads first, by the name it has in dist/: the same bytes are built, measured and judged. */
export const bundles = ["functions.js", "taskpane.js"] as const;
export type Bundle = (typeof bundles)[number];

/** A bundle's files by name, the bundle itself first. */
export type Bundled = ReadonlyMap<string, Uint8Array>;

/** Terser saves a tenth over esbuild alone. */
async function minified(bytes: Uint8Array): Promise<Uint8Array> {
  const { code } = await minify(new TextDecoder().decode(bytes), {
    ecma: 2020,
    compress: { passes: 3, unsafe_arrows: true },
    format: { comments: false },
  });
  return new TextEncoder().encode(code);
}

async function built(options: BuildOptions): Promise<Bundled> {
  const { outputFiles } = await build({
    bundle: true,
    minify: true,
    // The oldest engine that Excel still brings along.
    target: "es2020",
    charset: "utf8",
    legalComments: "none",
    outdir: root,
    ...options,
    plugins: [...(options.plugins ?? []), noting],
    write: false,
  });
  return new Map(outputFiles!.map(({ path, contents }) => [basename(path), contents]));
}

/** The functions: one script without imports. */
async function functions(): Promise<Bundled> {
  const files = await built({ entryPoints: { functions: join(root, "src/excel/functions.ts") }, format: "iife", plugins: [slimFunctions] });
  return new Map(await Promise.all([...files].map(async ([name, bytes]) => [name, await minified(bytes)] as const)));
}

/** The pane: one module for its first view, and a module for each view and tool that is loaded when it is first wanted. */
const pane = (): Promise<Bundled> =>
  built({
    entryPoints: { taskpane: join(root, "taskpane/app/taskpane.ts") },
    format: "esm",
    splitting: true,
    chunkNames: "taskpane-[name]-[hash]",
    plugins: [slimPane],
  });

/** The pane in one script, for a page that is one file. */
export const paneInOne = (): Promise<Bundled> =>
  built({ entryPoints: { taskpane: join(root, "taskpane/app/taskpane.ts") }, format: "iife", plugins: [slimPane] });

export const bundled = (name: Bundle): Promise<Bundled> => (name === "functions.js" ? functions() : pane());

/** The bytes that a bundle loads before it shows anything: its own file, and what that imports at once. */
export function atStart(files: Bundled, name: string, seen = new Set<string>()): Uint8Array[] {
  const bytes = files.get(name);
  if (!bytes || seen.has(name)) return [];
  seen.add(name);
  const imports = new TextDecoder().decode(bytes).matchAll(/(?:from|import)"\.\/([^"]+)"/g);
  return [bytes, ...[...imports].flatMap(([, file]) => atStart(files, file, seen))];
}

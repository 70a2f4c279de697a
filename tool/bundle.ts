import { join } from "node:path";
import { build } from "esbuild";
import { minify } from "terser";
import { slimFunctions, slimPane } from "./slim";

const root = join(__dirname, "..");

/** What Excel loads, by the name it has in dist/: the same bytes are built, measured and judged. */
const entries = {
  "functions.js": "src/excel/functions.ts",
  "taskpane.js": "taskpane/taskpane.ts",
  "run.js": "taskpane/run/run.ts",
} as const;

export type Bundle = keyof typeof entries;
export const bundles = Object.keys(entries) as Bundle[];

/** One minified script without imports, for the oldest engine that Excel still brings along. Terser saves a tenth over esbuild alone. */
export async function bundled(name: Bundle): Promise<Uint8Array> {
  const { outputFiles } = await build({
    entryPoints: [join(root, entries[name])],
    bundle: true,
    minify: true,
    format: "iife",
    target: "es2020",
    charset: "utf8",
    legalComments: "none",
    plugins: [name === "functions.js" ? slimFunctions : slimPane],
    write: false,
  });
  const { code } = await minify(outputFiles[0].text, {
    ecma: 2020,
    compress: { passes: 3, unsafe_arrows: true },
    format: { comments: false },
  });
  return new TextEncoder().encode(code);
}

import { createHash } from "node:crypto";
import { existsSync, readdirSync, readFileSync, renameSync, rmSync, statSync, writeFileSync } from "node:fs";
import { join, relative } from "node:path";

/** dist/, made anew only where something that it is made of has changed: one build serves `npm start`, every judge and every browser test. */

const root = join(__dirname, "..");
export const dist = join(root, "dist");
const mark = join(root, ".cache/built");
const madeOf = [
  "assets",
  "docs",
  "shared",
  "sheet",
  "src",
  "taskpane",
  "tool",
  "LICENSE",
  "manifest.xml",
  "package.json",
  "package-lock.json",
];

function filesOf(path: string): string[] {
  if (!existsSync(path)) return [];
  if (!statSync(path).isDirectory()) return [path];
  return readdirSync(path)
    .sort()
    .flatMap((name) => filesOf(join(path, name)));
}

/** Compared by content, not by time: file times of a clone mean nothing. */
function fingerprint(): string {
  const hash = createHash("sha256");
  for (const file of madeOf.flatMap((name) => filesOf(join(root, name)))) {
    const bytes = readFileSync(file);
    hash.update(`${relative(root, file)} ${bytes.length}\n`).update(bytes);
  }
  return hash.digest("hex");
}

const isFresh = (print: string): boolean =>
  existsSync(join(dist, "index.html")) && existsSync(mark) && readFileSync(mark, "utf8") === print;

/** Builds dist/ if it is not what the sources make of it. */
export async function freshen(): Promise<void> {
  const print = fingerprint();
  if (isFresh(print)) return;
  // Built aside, so that a build that fails, or is under way, leaves the one before as it was.
  const aside = join(root, `.cache/build-${process.pid}`);
  try {
    const { build } = await import("./build");
    await build(aside);
    rmSync(dist, { recursive: true, force: true });
    renameSync(aside, dist);
    writeFileSync(mark, print);
  } finally {
    rmSync(aside, { recursive: true, force: true });
  }
}

if (require.main === module)
  freshen().then(
    () => console.log("dist/ holds the add-in and the page."),
    (error: unknown) => {
      console.error(error);
      process.exit(1);
    },
  );

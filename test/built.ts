import { cpSync, readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { folder } from "../src/workbook/choice";
import { writeMetadata } from "../tool/build";
import { dist } from "../tool/fresh";
import { fileName } from "../tool/workbook";

/** What the build wrote: every judge and every browser test reads the same. */
export const built = (path: string): Buffer => readFileSync(join(dist, path));

/** The pane's scripts by their names: the one it begins with, and those that it loads later. */
export const paneScripts = (): ReadonlyMap<string, Buffer> =>
  new Map(
    readdirSync(dist)
      .filter((name) => /^taskpane.*\.js$/.test(name))
      .map((name) => [name, built(name)]),
  );

type Named = Parameters<typeof fileName>;
export const workbookPath = (...named: Named): string => join(dist, folder, fileName(...named));
export const workbookFile = (...named: Named): Buffer => readFileSync(workbookPath(...named));

/** dist/ for another host, as `npm run package` would build it. */
export async function rehosted(folder: string, host: string): Promise<void> {
  cpSync(dist, folder, { recursive: true });
  await writeMetadata(folder, host);
}

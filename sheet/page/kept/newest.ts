import * as store from "./store";
import { type Content, cellsOnly, fromKept, type Read } from "./work";

/** Which version opened, and what a person should know of it; or, without a moment, why none did. */
interface Opened {
  readonly moment?: number;
  readonly words: string;
}

const setAside = (name: string, count: number): string => {
  const versions = count === 1 ? `The newest version of ${name} was` : `The ${count} newest versions of ${name} were`;
  return `${versions} not readable and set aside: see Workbooks.`;
};

/** A record that can be read, with the file that it rests on. */
async function withFile(id: string, read: Extract<Read, { state: "read" }>): Promise<Content> {
  const file = read.file === undefined ? undefined : await store.fileAt(id, read.file);
  return file ? { ...read.content, file } : read.content;
}

/**
 * Opens the newest version that can be read.
 * @param mayChange only who may change a workbook sets its damaged versions aside
 * @param opens tries to show what a version holds, and answers whether that worked
 */
export async function newestOf(
  { id, name, versions }: store.Shelved,
  mayChange: boolean,
  opens: (content: Content) => Promise<boolean>,
): Promise<Opened> {
  let aside = 0;
  const before = () => (aside ? `${setAside(name, aside)} The version before is open instead.` : "");
  for (const moment of versions) {
    const kept = await store.version(id, moment);
    // Deleted in another tab meanwhile.
    if (kept === undefined) continue;
    const read = fromKept(kept);
    if (read.state === "newer")
      return { words: `${name} was saved by a newer Porewise: reload the page to get that one. Nothing was changed.` };
    if (read.state === "read") {
      const content = await withFile(id, read);
      if (await opens(content)) return { moment, words: before() };
      const words = `Only the cells of ${name} can be shown: the spreadsheet on this page fails on its formatting. All of it is kept under its earlier versions.`;
      if (await opens(cellsOnly(content))) return { moment, words: `${before()} ${words}`.trim() };
    }
    if (!mayChange) continue;
    await store.setAside(id, moment);
    aside++;
  }
  return { words: aside ? `${setAside(name, aside)} There is no version before.` : `${name} has no version that can be read here.` };
}

/** What a workbook held at a moment, or holds by its newest version; undefined where that cannot be read. */
export async function contentAt(id: string, moment?: number): Promise<Content | undefined> {
  const wanted = moment ?? (await store.momentsOf(id))[0];
  const read = wanted === undefined ? undefined : fromKept(await store.version(id, wanted));
  return read?.state === "read" ? withFile(id, read) : undefined;
}

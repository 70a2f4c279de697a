import type { Ended } from "../../shared/host";
import { saveFile } from "../../taskpane/save";
import type { Asker } from "./ask";
import { bundle } from "./bundle";
import { downloadWorkbook, fileName } from "./download";
import { contentOf, readFile } from "./files";
import { type Aside, aside, type Shelved } from "./kept/store";
import type { Library } from "./library";
import { costOf } from "./savelosses";
import { startContent, starts } from "./starts";

export const unreadable: Ended = { done: false, words: "It cannot be read. Nothing was changed." };
const noFile = (name: string): Ended => ({ done: false, words: `${name} was made before this page kept files, so there is no original.` });
const done = (words: string): Ended => ({ done: true, words });

/** What can be done with the workbooks that this browser keeps; each act answers how it ended. */
export class BookActs {
  constructor(
    private readonly library: Library,
    private readonly asker: Asker,
  ) {}

  async create(start: string): Promise<Ended> {
    const from = starts.find(({ file }) => file === start)!;
    const content = await startContent(from);
    return typeof content === "string" ? { done: false, words: content } : this.library.create(from.name, content);
  }

  async copy({ id, name }: Shelved): Promise<Ended> {
    const content = await this.library.contentOf(id);
    return content ? this.library.create(name, content) : unreadable;
  }

  /** Asks first where the file would hold less than the workbook. */
  async download(id: string, name: string, moment?: number): Promise<Ended> {
    const content = moment === undefined ? await this.library.shapeOf(id) : undefined;
    const words = content && costOf(content);
    if (words && !(await this.asker.ask(`Download ${name}?`, words, "Download", "Cancel"))) return done("");
    const file = await this.library.fileOf(id, moment);
    if (!file) return unreadable;
    downloadWorkbook(name, file);
    return done(`Downloaded ${fileName(name)}.`);
  }

  async original({ id, name }: Shelved): Promise<Ended> {
    const content = await this.library.contentOf(id);
    if (!content?.file) return noFile(name);
    downloadWorkbook(`${name}, original`, content.file);
    return done(`Downloaded ${fileName(`${name}, original`)}: the file as it was opened.`);
  }

  async goBackToFile({ id, name }: Shelved): Promise<Ended> {
    const file = (await this.library.contentOf(id))?.file;
    if (!file) return noFile(name);
    const read = await readFile(file, name);
    return typeof read === "string" ? { done: false, words: read } : this.library.goBackTo(id, contentOf(read));
  }

  async downloadAll(books: readonly Shelved[], setAside: readonly Aside[]): Promise<Ended> {
    const { bytes, left } = await bundle(books, setAside, (id) => this.library.fileOf(id));
    saveFile("porewise-workbooks.zip", bytes as BlobPart, "application/zip");
    const words = left.length ? `; not ${left.join(", ")}, which could not be read` : "";
    return done(`Downloaded all of them as one zip file${words}.`);
  }

  async downloadAside(one: Aside): Promise<Ended> {
    saveFile(fileName(one.name, "json"), JSON.stringify(await aside(one)), "application/json");
    return done("Downloaded as the browser kept it.");
  }
}

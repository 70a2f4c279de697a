import type { Ended, Work } from "../../shared/host";
import { Unreadable } from "../../shared/xlsx/unzip";
import { plainEdition } from "../../src/workbook/sharing/plainedition";
import { inserted } from "../file/insert/insert";
import type { Desk } from "./desk";
import { downloadWorkbook, fileName } from "./download";
import { breath, type Files, readFile } from "./files";
import type { Whole } from "./host";
import type { Library } from "./library";
import { engine } from "./vendor";

const stopped = (words: string): Ended => ({ done: false, words: `Stopped: ${words}.` });

/** What the pane does with whole workbooks on the page. */
export function wholeOf(desk: Desk, library: Library, files: Files): Whole {
  return {
    async insert(file: Uint8Array, sheets: readonly string[], { progress, stop }: Work) {
      const from = await readFile(file, "The file", { stop, progress: (share) => progress(share * 0.3) });
      if (typeof from === "string") return { done: false, words: from };
      progress(0.3);
      await breath();
      try {
        const { work, added } = inserted(desk.content(), from, sheets, engine);
        progress(0.6);
        await breath();
        if (stop.aborted) return stopped("the workbook is as it was");
        const ended = await library.replace(work);
        return ended.done
          ? {
              done: true,
              words: `Inserted at the end: ${added.join(", ")}. To take it back: the button with the workbook's name at the top, then Earlier versions.`,
            }
          : ended;
      } catch (error) {
        if (error instanceof Unreadable) return { done: false, words: `Nothing was inserted: ${error.message}.` };
        throw error;
      }
    },

    open: (file, name) => files.open(file, name),

    async copyWithValues({ progress, stop }: Work) {
      await breath();
      const name = `${library.current.name}, without the add-in`;
      const saved = await desk.file();
      progress(0.7);
      await breath();
      const { file, words } = plainEdition(saved);
      if (stop.aborted) return stopped("no copy was made");
      downloadWorkbook(name, file);
      return { done: true, words: `Downloaded ${fileName(name)}: ${words}.` };
    },
  };
}

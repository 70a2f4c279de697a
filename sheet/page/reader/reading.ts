import "../../../taskpane/inside";
import type { Opened } from "../../file/open";

/** What the reader tells the page. */
export type Told =
  | { readonly ready: true }
  | { readonly progress: number }
  | { readonly content: Omit<Opened, "file"> }
  | { readonly refused: string };

export interface Reading {
  readonly progress?: (share: number) => void;
  readonly stop?: AbortSignal;
}

/** How long a file may take, so that one made to take forever ends. */
const longest = 20_000;

const readerFile = "reader.js";

let waiting: Worker | undefined;

/** Has a reader ready: loading the engine takes longer than a small file. */
export function prepareReader(): Worker | undefined {
  try {
    waiting ??= new Worker(globalThis.porewiseReader?.() ?? readerFile);
  } catch {
    // A browser without workers reads on the page itself.
  }
  return waiting;
}

/** Why a file was not read, for the end of a sentence. */
const tooLong = "it takes longer than 20 seconds to read";
const stopped = "you stopped it";

/** Reads a file beside the page; the answer is the workbook or why there is none. Undefined where the browser has no reader. */
export function readBeside(bytes: Uint8Array, { progress, stop }: Reading): Promise<Opened | string | undefined> {
  const worker = prepareReader();
  waiting = undefined;
  if (!worker) return Promise.resolve(undefined);
  return new Promise((answer) => {
    let begun = false;
    const end = (told: Opened | string | undefined): void => {
      clearTimeout(timer);
      stop?.removeEventListener("abort", onStop);
      worker.terminate();
      answer(told);
    };
    const onStop = () => end(stopped);
    const timer = setTimeout(() => end(tooLong), longest);
    stop?.addEventListener("abort", onStop);
    worker.addEventListener("error", (event) => {
      event.preventDefault();
      end(begun ? "reading it takes more memory than there is" : undefined);
    });
    worker.addEventListener("message", ({ data }: MessageEvent<Told>) => {
      begun = true;
      if ("progress" in data) progress?.(data.progress);
      else if ("content" in data) end({ ...data.content, file: bytes });
      else if ("refused" in data) end(data.refused);
    });
    if (stop?.aborted) end(stopped);
    else worker.postMessage(bytes);
  });
}

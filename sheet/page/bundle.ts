import { strToU8, zipSync } from "fflate";
import { freeName } from "../freename";
import { fileName } from "./download";
import { type Aside, aside, type Shelved } from "./kept/store";

const longest = 120;

/** All workbooks as files in one zip file, with the damaged ones as they were kept; `left` are the names of those that cannot be read. */
export async function bundle(
  books: readonly Shelved[],
  asides: readonly Aside[],
  fileOf: (id: string) => Promise<Uint8Array | undefined>,
): Promise<{ bytes: Uint8Array; left: string[] }> {
  const files: Record<string, Uint8Array> = {};
  const left: string[] = [];
  // Two names may differ only in characters that a file system forbids or does not tell apart.
  const taken = new Set<string>();
  const put = (name: string, ending: string, bytes: Uint8Array): void => {
    const free = freeName(name, (one) => taken.has(fileName(one, ending).toLowerCase()), longest);
    taken.add(fileName(free, ending).toLowerCase());
    files[fileName(free, ending)] = bytes;
  };
  for (const { id, name } of books) {
    const file = await fileOf(id);
    if (file) put(name, "xlsx", file);
    else left.push(name);
  }
  for (const one of asides) put(`${one.name}, set aside ${one.moment}`, "json", strToU8(JSON.stringify(await aside(one))));
  // Not compressed again: an xlsx file is compressed already.
  return { bytes: zipSync(files, { level: 0 }), left };
}

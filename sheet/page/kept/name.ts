import { freeName } from "../../freename";
import * as store from "./store";

/** The longest name, in letters: a list shows it on one line. */
export const longest = 80;

/** A name as it is kept: without stray spaces, and not too long. */
export const tidy = (name: string): string => name.trim().replace(/\s+/g, " ").slice(0, longest);

/** A name that no other workbook has; `own` is the one that gets it. */
export async function freeOnShelf(name: string, own?: string): Promise<string> {
  const kept = await store.shelf().catch(() => []);
  const taken = new Set(kept.filter(({ id }) => id !== own).map((one) => one.name.toLowerCase()));
  return freeName(tidy(name) || "Workbook", (one) => taken.has(one.toLowerCase()), longest);
}

import { isFault, type Outcome } from "../outcome";
import { escaped } from "./xml";

/** A value as a cell element stores it. */
export interface StoredValue {
  /** The type that a cell's start tag names; none for a number. */
  readonly type: string | undefined;
  readonly text: string | undefined;
}

export function storedOf(value: Outcome | undefined): StoredValue {
  if (value === undefined) return { type: undefined, text: undefined };
  if (isFault(value)) return { type: "e", text: value.error };
  if (typeof value === "boolean") return { type: "b", text: value ? "1" : "0" };
  return typeof value === "number" ? { type: undefined, text: String(value) } : { type: "str", text: escaped(value) };
}

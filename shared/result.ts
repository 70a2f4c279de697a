import type { Arg, Value } from "./argument";
import { notFinite } from "./message";
import { type Outcome, Trouble } from "./outcome";
import { fromInternal, type Unit, type Units } from "./unit";
import type { Kind } from "./unittable";

type Cells = Readonly<Record<string, Arg>>;

/** A cell of a row or table may hold its own trouble, or nothing. */
type CellValues<C extends Cells> = { readonly [K in keyof C]: Value<C[K]> | Trouble | undefined };

/** What a function gives: one cell, cells side by side, a table that spills with or without a header, or one value a cell of an argument. */
export type Result<R = any> =
  | { readonly form: "cell"; readonly of: Arg; readonly made?: R }
  | { readonly form: "row"; readonly of: Cells; readonly made?: R }
  | { readonly form: "table"; readonly of: Cells; readonly header: boolean; readonly made?: R }
  | { readonly form: "spread"; readonly of: Arg; readonly over: string; readonly made?: R };

export type Made<S> = S extends Result<infer R> ? R : never;

export const cell = <T>(of: Arg<T>): Result<T> => ({ form: "cell", of });
export const row = <C extends Cells>(of: C): Result<CellValues<C>> => ({ form: "row", of });
export const table = <C extends Cells>(of: C, header = true): Result<readonly CellValues<C>[]> => ({ form: "table", of, header });
/** One value for each cell of the argument named, in its shape. */
export const spread = <T>(of: Arg<T>, over: string): Result<readonly (T | Trouble | undefined)[]> => ({ form: "spread", of, over });

/** The unit of a resulting number of a kind. */
export const outgoing = (kind: Kind, units: Units, typedIn?: Unit): Unit => (kind === "weight" && typedIn ? typedIn : units[kind]);

/** One value as its cell shows it: in plain units, never NaN or Infinity. A weight goes out in the unit it was typed in. */
export function shown(of: Arg, value: unknown, units: Units, typedIn?: Unit): Outcome {
  if (value instanceof Trouble) return value.in(units);
  return of.show && value !== undefined ? plain(of, of.show(value, units), units) : plain(of, value, units, typedIn);
}

function plain(of: Arg, value: unknown, units: Units, typedIn?: Unit): Outcome {
  if (typeof value === "number") {
    const out = of.kind ? fromInternal(value, outgoing(of.kind, units, typedIn)) : value;
    return Number.isFinite(out) ? out + 0 : notFinite().in(units);
  }
  return value === undefined || value === null ? "" : (value as string | boolean);
}

const columns = (of: Cells, made: Record<string, unknown>, units: Units, typedIn?: Unit): Outcome[] =>
  Object.entries(of).map(([name, arg]) => shown(arg, made[name], units, typedIn));

/** A whole result as the cells it fills. */
export function cellsOf(result: Result, made: any, units: Units, shape: { rows: number; columns: number }, typedIn?: Unit): Outcome[][] {
  if (result.form === "cell") return [[shown(result.of, made, units, typedIn)]];
  if (result.form === "row") return [columns(result.of, made, units, typedIn)];
  if (result.form === "spread") {
    const flat = (made as readonly unknown[]).map((value) => shown(result.of, value, units, typedIn));
    return Array.from({ length: shape.rows }, (_, r) => flat.slice(r * shape.columns, (r + 1) * shape.columns));
  }
  const lines = (made as readonly Record<string, unknown>[]).map((line) => columns(result.of, line, units, typedIn));
  return result.header ? [Object.values(result.of).map((arg) => arg.label), ...lines] : lines;
}

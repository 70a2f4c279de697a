import type { Arg, Values } from "./argument";
import type { Likely } from "./likely";
import type { Said, Sentence } from "./outcome";
import type { Made, Result } from "./result";
import type { Setting } from "./settings";
import { text } from "./words";

type Args = Readonly<Record<string, Arg>>;
type Settings = Readonly<Record<string, Setting>>;

/** Numbers on the way to an answer, by the name an equation may call them. */
export type Steps = Readonly<Record<string, Said | string>>;

export interface Contract<A extends Args = any, S extends Settings = any, R extends Result = any> {
  readonly name: Uppercase<string>;
  /** A per-piece function takes cells or columns and answers each row; the others are asked once. */
  readonly per: "piece" | "call";
  readonly asks: string;
  readonly args: A;
  /** Settings that it uses beside its arguments. Present, even if empty, where the last argument is a shop. */
  readonly shop?: S;
  readonly returns: R;
  /** A number format, or one for each column of a row or table. */
  readonly format: string | Readonly<Record<string, string>>;
  /** With arguments, settings and steps in braces: help shows their names, the working their numbers. */
  readonly equation: string;
  /** Edition and equation number; "common practice, no source"; or "from memory". */
  readonly source: string;
  /** Accuracy as the source claims it. */
  readonly accuracy: string;
  readonly cautions: readonly string[];
  /** Arguments as typed, and what the cell then shows. A test runs it. */
  readonly worked: { readonly typed: readonly unknown[]; readonly gives: unknown };
  /** The same formula in built-in spreadsheet syntax and internal units, where it is closed; of a row, by the cell it fills. */
  readonly twin?: string | Readonly<Record<string, string>>;
  /** Numbers on the way to the answer, for the working only. */
  readonly steps?: (given: Values<A> & Values<S>) => Steps;
  /** The likely range of the answer where it can be worked out; of a row, by the cell it fills. */
  readonly trust?: (given: Values<A> & Values<S>) => Likely | Readonly<Record<string, Likely>> | undefined;
  /** A note shown above the form, before anything is typed. */
  readonly before?: Sentence;
  /** A note shown beside the answer, which might be misread without it. */
  readonly beside?: (given: Values<A> & Values<S>) => readonly Sentence[];
  readonly run: (given: Values<A> & Values<S>) => Made<R>;
}

/** States one function. Types of `run` follow from the arguments, settings and result. */
export const define = <A extends Args, R extends Result, S extends Settings = Record<never, never>>(
  contract: Omit<Contract<A, S, R>, "run"> & { readonly run: (given: Values<A> & Values<S>) => NoInfer<Made<R>> },
): Contract<A, S, R> => contract;

export const shopArg: Arg<string> = { ...text("shop: two columns, setting and value; or US or SI", "US"), optional: true };

/** Arguments as a caller counts them: the contract's own, then the shop. */
export const parameters = (contract: Contract): readonly (readonly [name: string, arg: Arg])[] => {
  const own = Object.entries(contract.args as Args);
  return contract.shop ? [...own, ["shop", shopArg]] : own;
};

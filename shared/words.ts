import * as z from "zod/mini";
import { type Arg, shown, words } from "./argument";
import * as message from "./message";
import { handedOn, isFault } from "./outcome";

/** Words as they stand. */
export const text = (label: string, example: string): Arg<string> => ({
  label,
  example,
  sample: () => `words such as ${example}`,
  read: (cell) => {
    if (isFault(cell)) throw handedOn(cell);
    if (typeof cell === "number" && !Number.isFinite(cell)) throw message.notFinite();
    return words(cell);
  },
});

/** TRUE or FALSE: a result only. */
export const truth = (label: string, example: boolean): Arg<boolean> => ({ label, example, sample: () => "TRUE or FALSE", read: Boolean });

const fold = (word: string) => word.toLowerCase().replace(/\s+/g, " ").trim();

/** One of a few words, in any case. */
export function choice<const C extends string>(label: string, choices: readonly C[], example: C): Arg<C> {
  const known = z.enum(choices as readonly [C, ...C[]]);
  const spelled = new Map(choices.map((word) => [fold(word), word]));
  return {
    label,
    example,
    choices,
    sample: () => choices.join(" or "),
    read: (cell) => {
      if (isFault(cell)) throw handedOn(cell);
      const found = known.safeParse(spelled.get(fold(shown(cell))));
      if (!found.success) throw message.notChoice(label, shown(cell), choices);
      return found.data as C;
    },
  };
}

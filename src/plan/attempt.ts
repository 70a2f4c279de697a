import { Trouble } from "../../shared/outcome";

/** What a calculation gives, or why it gives nothing: for a table whose cells fail one by one. */
export function attempt<T>(calculation: () => T): T | Trouble {
  try {
    return calculation();
  } catch (trouble) {
    if (trouble instanceof Trouble) return trouble;
    throw trouble;
  }
}

export const isTrouble = (made: unknown): made is Trouble => made instanceof Trouble;

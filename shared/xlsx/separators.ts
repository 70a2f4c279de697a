import { joined, tokensOf } from "./tokens";

/**
 * A formula for a locale with a decimal comma: a semicolon then separates arguments, and a backslash the columns of an
 * array. Which of the two a program wants between columns follows from its list separator, which Excel does not tell.
 */
export function withCommas(formula: string): string {
  let inArray = false;
  return joined(
    tokensOf(formula).map((token) => {
      const { kind, text } = token;
      if (text === "{" || text === "}") inArray = text === "{";
      if (kind === "number") return { kind, text: text.replace(".", ",") };
      return kind === "mark" && text === "," ? { kind, text: inArray ? "\\" : ";" } : token;
    }),
  );
}

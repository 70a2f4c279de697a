const literal = (typed: unknown): string =>
  typed === undefined || typed === null ? "" : typeof typed === "string" ? `"${typed.replace(/"/g, '""')}"` : String(typed).toUpperCase();

/** A list is a column and a list of lists a block: an array as a cell writes it. */
export function literalOf(typed: unknown): string {
  if (!Array.isArray(typed)) return literal(typed);
  const rows = typed.map((row) => (Array.isArray(row) ? row : [row]).map((cell) => literal(cell) || '""').join(","));
  return `{${rows.join(";")}}`;
}

/** A call as it is typed into a cell; an argument left out leaves its place empty. */
export const formulaOf = (name: string, typed: readonly unknown[]): string => `=${name}(${typed.map(literalOf).join(",")})`;

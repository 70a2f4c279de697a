/** The full path of an installed program, or nothing. */
export function findProgram(which: "browser" | "spreadsheet" | "paper"): string | undefined;

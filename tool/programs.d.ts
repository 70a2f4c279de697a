/** The full path of an installed program, or nothing. */
export function findProgram(which: "browser" | "firefox" | "spreadsheet" | "paper" | "nginx" | "caddy"): string | undefined;

import type { Arg } from "../../shared/argument";
import { text } from "../../shared/words";

/** The name of a color, or "clear" for resin without dye. */
export const colorArg: Arg<string> = text("color", "blue");

/** One color however it is written: any case, spaces let be. */
export const colorKey = (color: string): string => color.toLowerCase().replace(/\s+/g, " ").trim();

export const isClear = (color: string): boolean => colorKey(color) === "clear";

/** Behind the name of a line, where there are several colors. */
export const suffixOf = (color: string): string => `, ${color || "no color"}`;

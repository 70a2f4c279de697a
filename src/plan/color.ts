import type { Arg } from "../../shared/argument";
import { text } from "../../shared/words";

/** The name of a color, or "clear" for resin without dye. */
export const colorArg: Arg<string> = text("color", "blue");

/** The key of a color: without regard to case and outer spaces. */
export const colorKey = (color: string): string => color.toLowerCase().replace(/\s+/g, " ").trim();

export const isClear = (color: string): boolean => colorKey(color) === "clear";

/** Put after the name of a line where there are several colors. */
export const suffixOf = (color: string): string => `, ${color || "no color"}`;

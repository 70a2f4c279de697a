const vulgar: Record<string, string> = {
  "½": "1/2",
  "⅓": "1/3",
  "⅔": "2/3",
  "¼": "1/4",
  "¾": "3/4",
  "⅛": "1/8",
  "⅜": "3/8",
  "⅝": "5/8",
  "⅞": "7/8",
};

/** A number as people write one, then whatever stands behind it. */
const pattern = /^([+-]?)\s*(?:(\d+)[\s-]+(\d+)\s*\/\s*(\d+)|(\d+)\s*\/\s*(\d+)|(\d+\.?\d*(?:e[+-]?\d+)?|\.\d+(?:e[+-]?\d+)?))\s*(.*)$/i;

/** A number with its unit is shorter; the pattern would try a longer text too many ways. */
const longest = 200;

export interface Typed {
  readonly number: number;
  /** What stands behind the number, trimmed: a unit, or nothing. */
  readonly rest: string;
}

/** Reads `19 mm`, `3/4 in`, `1 1/2"`, `.75in`, `1-1/2 in`; undefined where no number leads. A decimal comma is the caller's to refuse. */
export function readTyped(text: string): Typed | undefined {
  const trimmed = text.trim();
  if (trimmed.length > longest) return undefined;
  const plain = trimmed
    .replace(/[−–]/g, "-")
    .replace(/[½⅓⅔¼¾⅛⅜⅝⅞]/g, (f) => ` ${vulgar[f]}`)
    .trim();
  const found = pattern.exec(plain);
  if (!found) return undefined;
  const [, sign, whole, over, under, top, bottom, decimal, rest] = found;
  const size = whole ? Number(whole) + Number(over) / Number(under) : top ? Number(top) / Number(bottom) : Number(decimal);
  return { number: sign === "-" ? -size : size, rest: (rest ?? "").trim() };
}

/** `1,5 L` and `1,000 g` mean different things to different people. */
export const hasComma = (text: string): boolean => /\d,\d|^,\d|\d,$/.test(text.trim());

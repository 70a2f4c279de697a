import { distance } from "fastest-levenshtein";

const wordsOf = (text: string): string[] => text.split(/[\s-]+/).filter((word) => word.length > 3);

/** Edit distance of the nearest two words of two names, if one may be the other mistyped; the distance of the `whole` names breaks ties. */
function byWords(wanted: string, name: string, whole: number): number {
  const pairs = wordsOf(wanted).flatMap((typed) => wordsOf(name).map((word) => ({ typed, word, off: distance(typed, word) })));
  const meant = pairs.filter(({ typed, word, off }) => typed[0] === word[0] && off <= typed.length / 2.5);
  return Math.min(...meant.map(({ off }) => off)) + 0.5 + whole / 100;
}

/** Names that a mistyped one may have meant, nearest first; those that share nothing with it are left out. */
export function nearest(typed: string, names: readonly string[], most = 3): string[] {
  const wanted = typed.toLowerCase();
  const off = (name: string) => {
    const own = name.toLowerCase();
    const whole = distance(wanted, own);
    const near = Math.min(whole, byWords(wanted, own, whole));
    return own.includes(wanted) && wanted.length > 2 ? Math.min(near, 1) : near;
  };
  return names
    .map((name) => ({ name, off: off(name) }))
    .filter(({ name, off }) => off < Math.max(2, 0.7 * Math.max(name.length, wanted.length)))
    .sort((a, b) => a.off - b.off)
    .slice(0, most)
    .map(({ name }) => name);
}

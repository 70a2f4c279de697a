import { distance } from "fastest-levenshtein";

/** Names that a mistyped one may have meant, nearest first; those that share nothing with it are left out. */
export function nearest(typed: string, names: readonly string[], most = 3): string[] {
  const wanted = typed.toLowerCase();
  const off = (name: string) => {
    const near = distance(wanted, name.toLowerCase());
    return name.toLowerCase().includes(wanted) && wanted.length > 2 ? Math.min(near, 1) : near;
  };
  return names
    .map((name) => ({ name, off: off(name) }))
    .filter(({ name, off }) => off < Math.max(2, 0.7 * Math.max(name.length, wanted.length)))
    .sort((a, b) => a.off - b.off)
    .slice(0, most)
    .map(({ name }) => name);
}

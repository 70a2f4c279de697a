/** Rules of a sheet before and now, told apart by what they say and by the cells that they are for. */
interface Rule {
  readonly id: string;
  readonly ranges: readonly string[];
}

/** Nothing of the kind was touched on the sheet. */
export const nothingPaired = { gone: [], came: [], moved: [], was: new Map() };

export interface Paired<R extends Rule> {
  readonly gone: readonly R[];
  readonly came: readonly R[];
  /** The same rule, for other cells now. */
  readonly moved: readonly (readonly [was: R, is: R])[];
  /** The rule that each of those of now was, where it was there. */
  readonly was: ReadonlyMap<R, R>;
}

const cellsOf = ({ ranges }: Rule): string => [...ranges].sort().join(" ");

/** A rule that nobody touched is the one that it was, however the engine spells it after cells moved. */
export function paired<R extends Rule>(
  before: readonly R[],
  now: readonly R[],
  says: (rule: R) => string,
  isTouched: (rule: R) => boolean,
): Paired<R> {
  const left = new Set(before);
  const was = new Map<R, R>();
  const moved: [R, R][] = [];
  const words = new Map([...before, ...now].map((rule) => [rule, says(rule)]));
  const match = (rest: readonly R[], fits: (one: R, other: R) => boolean) =>
    rest.filter((rule) => {
      const found = [...left].find((one) => words.get(one) === words.get(rule) && fits(one, rule));
      if (!found) return true;
      left.delete(found);
      was.set(rule, found);
      return false;
    });
  const others = match(now, (one, other) => cellsOf(one) === cellsOf(other));
  const rest = match(
    match(others, (one, other) => one.id === other.id),
    () => true,
  );
  const untold = others.filter((rule) => was.has(rule));
  const came = rest.filter((rule) => {
    const found = isTouched(rule) ? undefined : [...left].find((one) => cellsOf(one) === cellsOf(rule) || one.id === rule.id);
    if (!found) return true;
    left.delete(found);
    was.set(rule, found);
    return false;
  });
  for (const rule of untold) moved.push([was.get(rule)!, rule]);
  return { gone: [...left], came, moved, was };
}

function numbered(name: string, number: number, longest: number): string {
  const end = ` ${number}`;
  // A letter of two halves is kept whole or not at all.
  return name.slice(0, longest - end.length).replace(/[\uD800-\uDBFF]$/, "") + end;
}

/** A name that is not taken: with a number from 2 on if need be, and no longer than is allowed. */
export function freeName(name: string, isTaken: (name: string) => boolean, longest: number): string {
  let free = name;
  for (let number = 2; isTaken(free); number++) free = numbered(name, number, longest);
  return free;
}

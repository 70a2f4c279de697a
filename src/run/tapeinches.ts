const sixteenths = 16;

/** Inches as a tape shows them: 13/16, 5 1/4; a value that is no whole number of sixteenths stays decimal. */
export function inFraction(inches: number): string {
  const parts = Math.round(inches * sixteenths);
  if (parts === 0 || Math.abs(inches - parts / sixteenths) > 0.002) return String(Number(inches.toPrecision(3)));
  const wholes = Math.floor(parts / sixteenths);
  let top = parts % sixteenths;
  if (!top) return String(wholes);
  let bottom = sixteenths;
  while (top % 2 === 0) [top, bottom] = [top / 2, bottom / 2];
  return `${wholes ? `${wholes} ` : ""}${top}/${bottom}`;
}

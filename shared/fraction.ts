/** A number from 0 to 1 as numerator and denominator, the denominator at most, or exactly, as given. */
function nearestParts(share: number, most: number, exact: boolean): readonly [top: number, bottom: number] {
  let best: readonly [number, number] = [Math.round(share), 1];
  let off = Number.POSITIVE_INFINITY;
  for (let bottom = exact ? most : 1; bottom <= most; bottom++) {
    const top = Math.round(share * bottom);
    const own = Math.abs(share - top / bottom);
    // A tie goes to the smaller denominator, so that sixteenths typed as decimals are sixteenths.
    if (own < off - 1e-12) [best, off] = [[top, bottom], own];
  }
  return best;
}

/** A number as spreadsheets show it by a fraction format: 1.125 as `1 1/8`. */
export function fractionText(value: number, most: number, exact = false): string {
  const whole = Math.floor(Math.abs(value));
  const [top, bottom] = nearestParts(Math.abs(value) - whole, most, exact);
  const carried = top === bottom ? whole + 1 : whole;
  const part = top && top !== bottom ? `${top}/${bottom}` : "";
  const text = [carried || !part ? String(carried) : "", part].filter(Boolean).join(" ");
  return value < 0 && text !== "0" ? `-${text}` : text;
}

import { commonSizes, papers, placeOf, sizesSlip } from "../../../src/labels/sizes";

it.each(["US", "SI"] as const)("has the common labels of %s on their paper, none over another or past an edge", (system) => {
  const sizes = commonSizes[system];
  expect(sizesSlip(sizes, system)).toBeUndefined();
  const all = Array.from({ length: sizes.across * sizes.down }, (_, i) => placeOf(i, sizes));
  for (const { sheet, x, y } of all) {
    expect(sheet).toBe(0);
    expect(x + sizes.width).toBeLessThanOrEqual(papers[system].width + 1e-6);
    expect(y + sizes.height).toBeLessThanOrEqual(papers[system].height + 1e-6);
  }
  for (const [i, a] of all.entries())
    for (const b of all.slice(i + 1))
      expect(a.x + sizes.width <= b.x + 1e-6 || b.x + sizes.width <= a.x + 1e-6 || a.y + sizes.height <= b.y + 1e-6).toBe(true);
  expect(placeOf(sizes.across * sizes.down, sizes)).toEqual({ ...all[0], sheet: 1 });
});

it.each([
  [{ across: 4 }, "width", "4 across need 11.06 in, and Letter is 8.5 in wide."],
  [{ down: 11 }, "height", "11 down need 11.5 in, and Letter is 11 in high."],
  [{ across: 2.5 }, "across", "How many labels across? Type a whole number from 1 to 40."],
] as const)("says which size does not go: %j", (change, field, words) =>
  expect(sizesSlip({ ...commonSizes.US, ...change }, "US")).toEqual({ field, words }),
);

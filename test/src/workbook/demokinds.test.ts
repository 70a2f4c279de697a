import { blanks } from "../../../src/demo";
import { kinds } from "../../../src/workbook/demokinds";

it("counts every blank of the demo once", () => expect(kinds.reduce((sum, { count }) => sum + count, 0)).toBe(blanks.length));

it("gives the slips of the bench rows of their own", () =>
  expect(kinds.filter(({ count }) => count === 1).map(({ label }) => label)).toEqual(["P-017", "P-024", "P-063"]));

it("names no kind twice: the sheet Today looks them up by name", () =>
  expect(new Set(kinds.map(({ label }) => label)).size).toBe(kinds.length));

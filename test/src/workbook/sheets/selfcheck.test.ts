import { catalogue, cellName } from "../../../../src/catalogue";
import { versionText } from "../../../../src/version";
import { calculated } from "../calculated";
import { filled } from "../filled";

const check = filled("Self-check");

it("asks each function for its worked example", () => {
  expect(check.under("gives", catalogue.length)).not.toContain("");
  for (const contract of catalogue) expect(check.beside(cellName(contract), 4)).toBe("agrees");
});

it("names in one line what does not agree, to be sent back", () => {
  const { whole, sheet, rows } = check;
  const at = `${rows("PORE.DYE")[0]},3`;
  sheet.cells.set(at, { ...sheet.cells.get(at), value: 0.75 });
  const after = calculated("US demo", whole);
  const { row, column } = whole.check;
  expect(after.value("Self-check", rows("PORE.DYE")[0], 4)).toBe("differs");
  expect(after.value("Self-check", row, column)).toBe(
    `Porewise ${versionText}: ${catalogue.length - 1} of ${catalogue.length} agree. Not: DYE`,
  );
});

it("marks both", () => expect(check.sheet.alerts.map(({ as }) => as)).toEqual(["bad", "good"]));

import { Page } from "../../../src/workbook/page";
import { refTo } from "../../../src/workbook/place";
import { validationsOf } from "../../../src/workbook/validation";

const page = new Page("A", "a test", [10, 10, 10, 10]);
page.line({ label: "how", input: { list: ["foil", "fan"], only: true } });
page.line({ label: "wide", input: { from: 1, to: 9 } });
page.line({ label: "high", input: { from: 1, to: 9 } });
page.line({ label: "day", input: { date: true } });
page.line({ label: "wood", input: { list: refTo("Woods", 1, 0, 90) } });
page.line({ label: "free", input: true });
const rules = validationsOf(page.sheet);

it("cells below each other that may hold the same are one rule", () => {
  expect(rules.map(({ range, type }) => `${range} ${type}`)).toEqual(["B1 list", "B2:B3 custom", "B4 date", "B5 list"]);
});

it("forbids what a short list lacks, and only warns of a number out of range: it may come with a unit", () => {
  expect(rules[0]).toMatchObject({ values: ["foil", "fan"], errorStyle: "stop", showErrorMessage: true });
  expect(rules[1]).toMatchObject({ formula1: "IF(ISNUMBER(B2),AND(B2>=1,B2<=9),ISTEXT(B2))", errorStyle: "warning" });
});

it("offers the woods of a long list and says nothing of one that is spelled otherwise", () =>
  expect(rules[3]).toMatchObject({ errorStyle: "warning", showErrorMessage: false }));

it("looks a long list up where it stands", () => expect(rules[3]).toMatchObject({ formula1: "Woods!$A$2:$A$91" }));

import { plainUnits } from "../../../shared/unit";
import { live } from "../../../src/workbook/live";
import { Page } from "../../../src/workbook/page";
import { cellIn } from "../../../src/workbook/place";
import { plain } from "../../../src/workbook/plain";
import { endBy, eveningBefore, later, spreadBack, startFrom } from "../../../src/workbook/sheets/backward";
import { recalculated } from "../../../tool/recalculated";
import { near } from "../../within";

const day = 46095;
const at = (hour: number, days = 0) => day + days + hour / 24;

/** A moment and so many hours of work, in a shop that opens at 8 and closes at 20. */
function worked(moment: number | string, hours: number): (name: string) => number {
  const page = new Page("A", "a test", [10, 10, 10, 10]);
  const [opens, closes] = [8, 20].map((value) => page.line({ label: "hour", value, input: true }));
  const limit = page.line({ label: "moment", value: moment, input: true });
  const length = page.line({ label: "hours", value: hours, input: true });
  const open = { opens, closes };
  const made = {
    endBy: endBy(limit, length, open),
    startFrom: startFrom(limit, length, open),
    spreadBack: spreadBack(limit, length, open),
    eveningBefore: eveningBefore(limit, open),
    later: later(limit, length),
  };
  const refs = Object.fromEntries(Object.entries(made).map(([name, formula]) => [name, page.line({ label: name, formula })]));
  const cached = recalculated({
    book: { title: "", sheets: [page.sheet], names: [] },
    live: () => live(cellIn(limit, 0)),
    plain: plain({ units: plainUnits("US"), setting: () => undefined, standard: () => 0 }),
    check: limit,
    paper: "a4",
  });
  return (name) => cached.value("A", refs[name].row, 1) as number;
}

it.each([
  { what: "ends when it must", moment: at(14), hours: 4, end: at(14) },
  { what: "began at opening time", moment: at(12), hours: 4, end: at(12) },
  { what: "too early for it: the evening before", moment: at(11), hours: 4, end: at(20, -1) },
  { what: "at night: closing time", moment: at(23), hours: 4, end: at(20) },
  { what: "before opening: the evening before", moment: at(3), hours: 1, end: at(20, -1) },
  { what: "as long as the day", moment: at(20), hours: 12, end: at(20) },
])("the last end of work: $what", ({ moment, hours, end }) => near(worked(moment, hours)("endBy"), end, 1e-12));

it.each([
  { what: "at once", moment: at(14), hours: 4, start: at(14) },
  { what: "until closing", moment: at(16), hours: 4, start: at(16) },
  { what: "too late for it: next morning", moment: at(17), hours: 4, start: at(8, 1) },
  { what: "at night: next morning", moment: at(23), hours: 1, start: at(8, 1) },
  { what: "before opening: at opening", moment: at(3), hours: 1, start: at(8) },
])("the first start of work: $what", ({ moment, hours, start }) => near(worked(moment, hours)("startFrom"), start, 1e-12));

it.each([
  { hours: 5, start: at(15) },
  { hours: 12, start: at(8) },
  { hours: 20, start: at(12, -1) },
  { hours: 24, start: at(8, -1) },
  { hours: 25, start: at(19, -2) },
])("$hours attended hours that end at closing time begin in time", ({ hours, start }) =>
  near(worked(at(20), hours)("spreadBack"), start, 1e-12),
);

it("the evening before, and so many hours later", () => {
  near(worked(at(9), 4)("eveningBefore"), at(20, -1), 1e-12);
  near(worked(at(9), 30)("later"), at(39), 1e-12);
});

it("nothing comes of a moment that is not given", () => {
  const nothing = worked("", 4);
  for (const name of ["endBy", "startFrom", "spreadBack", "eveningBefore", "later"]) expect(nothing(name)).toBe("");
});

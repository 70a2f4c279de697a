import { first } from "../../cautions";
import { fresh } from "../../checklist/list";
import { columns, room, toSheet } from "../../checklist/onsheet";
import { mostRuns } from "../../checklist/schema";
import { Page } from "../page";
import { type Ref, refTo } from "../place";
import { day } from "./day";

export interface Safety {
  readonly page: Page;
  /** Day, who runs it, who stands by, who calls for help. */
  readonly run: Ref;
  /** Done, when, check, why. */
  readonly list: Ref;
  /** Earlier runs: day, who, what was left open. */
  readonly runs: Ref;
}

/** Columns that go to paper: the reasons stay on the screen. */
const printed = 3;

/** The safety list: the one that the pane ticks, on one page for the wall or the clipboard. */
export function safetySheet(): Safety {
  const page = new Page("Safety", "Check off what is done. If something is not, stop there.", [6, 15, 78, 112], {
    pages: 1,
    columns: printed,
    narrow: true,
  });
  const { name } = page.sheet;
  // A row of the list is a line of ten points, with just the room that it needs: all of it stands on one page.
  page.sheet.line = 12;
  page.open("Safety list");
  page.row--;
  page.say(first, "caution");
  const run = refTo(name, page.row, 2, 4);
  for (const [i, label] of ["day", "who runs it", "who stands by", "who calls for help, number"].entries()) {
    page.put(page.row, 1, { value: label, look: "label" });
    page.put(page.row, 2, { look: "input", ...(i === 0 ? { format: day, allowed: { date: true } as const } : {}) });
    page.row++;
  }
  for (const [column, title] of columns.entries()) page.put(page.row, column, { value: title, look: "heading" });
  page.row++;
  const list = refTo(name, page.row, 0, room, columns.length);
  for (const [i, row] of toSheet(fresh).list.entries()) {
    const looks = ["tick", "itemNote", "item", "itemNote"] as const;
    for (const [column, value] of row.entries())
      page.put(page.row + i, column, {
        ...(value === "" ? {} : { value }),
        look: looks[column],
        ...(column === 0 ? { allowed: { list: ["x"] } } : {}),
      });
  }
  // An item is one line in every typeface, whatever a cautious guess at its width says.
  for (let row = 0; row < room; row++) page.sheet.heights.set(page.row + row, page.sheet.line);
  page.row += room;
  page.sheet.print = { ...page.sheet.print, rows: page.row };
  page.skip();
  page.heading("run", "who", "not checked");
  const runs = refTo(name, page.row, 0, mostRuns, 3);
  for (let row = 0; row < mostRuns; row++)
    for (const [column, look] of (["result", "words", "words"] as const).entries())
      page.put(page.row + row, column, { look, ...(column === 0 ? { format: day } : {}) });
  page.row += mostRuns;
  page.sheet.frozen = { rows: list.row, columns: 0 };
  return { page, run, list, runs };
}

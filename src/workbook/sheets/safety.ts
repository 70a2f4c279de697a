import { first } from "../../cautions";
import { defaults } from "../../checklist/items";
import { stageNames, stages } from "../../checklist/schema";
import { Page } from "../page";

/** The checklist for print: the list that the pane ticks travels in this file as a part of its own. */
export function safetySheet(): Page {
  const page = new Page(
    "Safety",
    "The checklist for a run, for the wall or the clipboard. Tick what is done. If something is not, stop there.",
    [6, 62, 58],
    { pages: 1 },
  );
  page.open("Safety");
  page.say(first, "caution");
  page.skip();
  for (const stage of stageNames) {
    page.heading("", stages[stage], "why");
    for (const { text, why } of defaults.filter((item) => item.stage === stage)) {
      page.put(page.row, 0, { look: "tick", allowed: { list: ["x", "open"] } });
      page.put(page.row, 1, { value: text, look: "words" });
      page.put(page.row, 2, { value: why, look: "note" });
      page.row++;
    }
  }
  page.skip();
  for (const label of ["day", "who runs it", "who stands by"]) {
    page.put(page.row, 1, { value: label, look: "label" });
    page.put(page.row, 2, { look: "input" });
    page.row++;
  }
  return page;
}

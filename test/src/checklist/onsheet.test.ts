import * as checklist from "../../../src/checklist/list";
import { inStage } from "../../../src/checklist/list";
import { fromSheet, room, toSheet } from "../../../src/checklist/onsheet";

const { fresh } = checklist;
const cells = () => structuredClone(toSheet(fresh)) as { run: any[][]; list: any[][]; runs: any[][] };
const rowOf = (list: any[][], id: string) => list.find(([, , text]) => text === fresh.items.find((item) => item.id === id)!.text)!;

describe("the list on its sheet", () => {
  it("comes back as it went", () => {
    const list = checklist.startRun(checklist.tick(fresh, "rated", true), { when: "2026-03-14", who: "me", by: "you", calls: "555 0100" });
    expect(fromSheet(list, toSheet(list))).toEqual(list);
    expect(toSheet(list).run).toEqual([[46095], ["me"], ["you"], ["555 0100"]]);
    expect(toSheet(list).runs[0].slice(1)).toEqual(["", expect.stringMatching(/^\d+ not checked: Read the makers/)]);
  });

  it.each(["x", "X", "✓", true])("takes %j in the first column as a tick", (tick) => {
    const sheet = cells();
    rowOf(sheet.list, "foam")[0] = tick;
    expect(
      fromSheet(fresh, sheet)
        .items.filter(({ done }) => done)
        .map(({ id }) => id),
    ).toEqual(["foam"]);
  });

  it.each(["", "open", "no", false, null])("takes %j as none", (tick) => {
    const sheet = cells();
    rowOf(sheet.list, "foam")[0] = tick;
    expect(fromSheet(fresh, sheet)).toEqual(fresh);
  });

  it("takes over words that were typed into a row", () => {
    const sheet = cells();
    rowOf(sheet.list, "foam")[2] = "Room for foam: two inches";
    const list = fromSheet(fresh, sheet);
    expect(list.items.find(({ id }) => id === "foam")).toMatchObject({ text: "Room for foam: two inches", stage: "vacuum" });
    expect(list.items).toHaveLength(fresh.items.length);
  });

  it("takes over rows that were added, put in another order, or cleared", () => {
    const sheet = cells();
    const free = sheet.list.findIndex(([, , text]) => text === "");
    sheet.list[free] = ["x", "Oven", "Sweep the floor", ""];
    rowOf(sheet.list, "foam")[2] = "";
    [sheet.list[0], sheet.list[1]] = [sheet.list[1], sheet.list[0]];
    const list = fromSheet(fresh, sheet);
    expect(inStage(list, "oven").at(-1)).toMatchObject({ text: "Sweep the floor", done: true });
    expect(checklist.removed(list).map(({ id }) => id)).toEqual(["foam"]);
    expect(list.items).toHaveLength(fresh.items.length);
  });

  it("leaves what it has no room for to the pane, and says so", () => {
    let list = fresh;
    for (let i = 0; i < room; i++) list = checklist.add(list, { stage: "after", text: `own ${i}`, why: "" });
    const sheet = toSheet(list);
    expect(sheet.list).toHaveLength(room);
    expect(sheet.list.at(-1)![2]).toMatch(/^\d+ more are on the list in the side pane$/);
    expect(fromSheet(list, sheet)).toEqual(list);
  });

  it("reads a day as a date or as text, and nothing else", () => {
    const dated = (day: unknown) => fromSheet(fresh, { ...cells(), run: [[day], [""], [""], [""]] }).now.when;
    expect([46095, "2026-03-14", "soon", -4, 1e9].map(dated)).toEqual(["2026-03-14", "2026-03-14", "", "", ""]);
  });
});

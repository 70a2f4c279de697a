import { defaults } from "../../../src/checklist/items";
import * as checklist from "../../../src/checklist/list";
import { listSchema, stageNames, stages } from "../../../src/checklist/schema";

const { fresh } = checklist;
const idsOf = (list: typeof fresh, stage: (typeof stageNames)[number]) => checklist.inStage(list, stage).map(({ id }) => id);
const words = { stage: "oven", text: "=HYPERLINK(1)", why: "mine" } as const;

describe("the safety list", () => {
  it("comes with items for every stage, each with its reason", () => {
    for (const stage of stageNames) expect(checklist.inStage(fresh, stage).length).toBeGreaterThan(3);
    expect(defaults.filter(({ text, why }) => !text || !why)).toEqual([]);
    expect(listSchema.safeParse(fresh).success).toBe(true);
  });

  it("names what the resin may touch, and the plastics that it attacks", () => {
    const { text, why } = defaults.find(({ id }) => id === "metals")!;
    expect(text).toMatch(/stainless steel, glass, polyethylene or polypropylene/);
    expect(why).toMatch(/attacks acrylic, polystyrene and polycarbonate/);
  });

  it("ticks one item", () => expect(checklist.tick(fresh, "rated", true).items.filter((item) => item.done)).toHaveLength(1));

  it("takes new items, in one line and at the end of their stage", () => {
    const list = checklist.add(checklist.add(fresh, words), { ...words, text: "  two\nlines " });
    expect(checklist.inStage(list, "oven").slice(-2)).toMatchObject([
      { id: "own-1", text: "=HYPERLINK(1)" },
      { id: "own-2", text: "two lines" },
    ]);
  });

  it("gives no number twice", () => {
    const list = checklist.remove(checklist.add(checklist.add(fresh, words), words), "own-1");
    expect(new Set(checklist.add(list, words).items.map(({ id }) => id)).size).toBe(list.items.length + 1);
  });

  it("moves an item among those of its stage, and not past the ends", () => {
    const [first, second] = idsOf(fresh, "vacuum");
    expect(idsOf(checklist.move(fresh, first, 1), "vacuum").slice(0, 2)).toEqual([second, first]);
    expect(checklist.move(fresh, first, -1)).toEqual(fresh);
  });

  it("moves an item to another stage by editing it", () => {
    const list = checklist.edit(fresh, "foam", { stage: "before", text: "Room for foam", why: "" });
    expect(idsOf(list, "before").at(-1)).toBe("foam");
    expect(checklist.isChanged(list.items.at(-1)!)).toBe(true);
  });

  it("restores an item that was edited, and one that was removed, where it stood", () => {
    const edited = checklist.edit(fresh, "foam", { stage: "vacuum", text: "x", why: "y" });
    expect(checklist.restore(edited, "foam")).toEqual(fresh);
    for (const { id } of defaults) {
      const without = checklist.remove(fresh, id);
      expect(checklist.removed(without).map((item) => item.id)).toEqual([id]);
      const back = checklist.restore(without, id);
      for (const stage of stageNames) expect(idsOf(back, stage)).toEqual(idsOf(fresh, stage));
    }
  });

  it("restores all and keeps own items and ticks", () => {
    const list = checklist.restoreAll(checklist.add(checklist.tick(checklist.remove(fresh, "foam"), "rated", true), words));
    expect(list.items).toHaveLength(defaults.length + 1);
    expect(list.items.filter((item) => item.done).map(({ id }) => id)).toEqual(["rated"]);
  });

  it("starts a new run: ticks go, and what was left unticked is kept with day and name", () => {
    const all = { items: fresh.items.map((item) => ({ ...item, done: item.id !== "foam" })) };
    const list = checklist.startRun(all, " the blue\nshop ", "2026-03-14");
    expect(list.items.some((item) => item.done)).toBe(false);
    expect(list.last).toEqual({ when: "2026-03-14", who: "the blue shop", open: [defaults.find(({ id }) => id === "foam")!.text] });
  });

  it("lists itself for a sheet, stage by stage", () => {
    const rows = checklist.rowsOf(checklist.startRun(checklist.tick(fresh, "rated", true), "", "2026-03-14"), stages);
    expect(rows[0]).toEqual(["Before you start", "", ""]);
    expect(rows.every((row) => row.length === 3)).toBe(true);
    expect(rows.filter(([title]) => title === "open")).toHaveLength(2 * defaults.length - 1);
  });
});

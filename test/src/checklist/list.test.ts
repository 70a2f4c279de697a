import { defaults } from "../../../src/checklist/items";
import * as checklist from "../../../src/checklist/list";
import { listSchema, mostRuns, stageNames } from "../../../src/checklist/schema";

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

  it("starts a new run: ticks go, and what was left unticked stays to be read with day and name", () => {
    const who = { when: "2026-03-14", who: " the blue\nshop ", by: "", calls: "the neighbor, 555 0100" };
    const begun = checklist.startRun(fresh, who);
    expect(begun).toEqual({ ...fresh, now: { ...who, who: "the blue shop" } });
    const all = { ...begun, items: fresh.items.map((item) => ({ ...item, done: item.id !== "foam" })) };
    const next = checklist.startRun(all, { ...who, when: "2026-03-21", who: "" });
    expect(next.items.some((item) => item.done)).toBe(false);
    expect(next.runs).toEqual([{ when: "2026-03-14", who: "the blue shop", open: [defaults.find(({ id }) => id === "foam")!.text] }]);
    expect(next.runs.map(checklist.leftOpen)).toEqual(["1 not checked"]);
  });

  it("keeps so many earlier runs and no more", () => {
    let list = fresh;
    for (let run = 0; run < mostRuns + 3; run++)
      list = checklist.startRun(list, { when: "2026-03-14", who: `run ${run}`, by: "", calls: "" });
    expect(list.runs).toHaveLength(mostRuns);
    expect(list.runs[0].who).toBe(`run ${mostRuns + 1}`);
    expect(listSchema.safeParse(list).data).toEqual(list);
  });

  it("says what to do when the power fails, when resin spills or gets into an eye, and who calls for help", () => {
    const text = defaults.map((item) => item.text).join("\n");
    for (const words of [
      /Power failure: .*let the air in/,
      /Spill: /,
      /Resin in an eye: rinse with water for 15 minutes/,
      /who calls for help/,
    ])
      expect(text).toMatch(words);
  });

  it("fits on paper: no line is longer than the page is wide", () => expect(defaults.filter(({ text }) => text.length > 86)).toEqual([]));
});

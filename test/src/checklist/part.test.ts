import { JSDOM } from "jsdom";
import * as checklist from "../../../src/checklist/list";
import { find, namespace, placeOf, read, write } from "../../../src/checklist/part";

const parser = new new JSDOM("").window.DOMParser();
const readBack = (xml: string) => read(xml, namespace, parser);

describe("the list as a part of the workbook", () => {
  it("comes back as it was written", () => {
    const list = checklist.startRun(checklist.tick(checklist.fresh, "rated", true), {
      when: "2026-03-14",
      who: "the blue shop",
      by: "",
      calls: "",
    });
    expect(readBack(write(list))).toEqual({ state: "read", list });
  });

  it.each(["=1+1", "<b>&amp;</b>", "]]>", 'a "quote" and \\ a stroke', "tab\tand\u0001bell", "\uFFFE", "äöü 木", "\u{1F332}"])(
    "keeps %j as text",
    (text) => {
      const list = { ...checklist.fresh, items: [{ id: "own-1", stage: "oven", text, why: text, done: false }] } as const;
      expect(readBack(write(list))).toEqual({ state: "read", list });
    },
  );

  it("reads a part that another program wrote anew", () => {
    const xml = write(checklist.fresh).replace(
      /<checklist xmlns="([^"]+)" version="1">/,
      "<?xml version='1.0'?>\n<p:checklist version='1' xmlns:p='$1'>",
    );
    expect(readBack(xml.replace("</checklist>", "</p:checklist>"))).toEqual({ state: "read", list: checklist.fresh });
  });

  it("reads a list of before, with its one last run", () => {
    const last = { when: "2026-03-14", who: "the blue shop", open: ["a"] };
    const { items } = checklist.fresh;
    const xml = `<checklist xmlns="${namespace}" version="1">${JSON.stringify({ items, last })}</checklist>`;
    expect(readBack(xml)).toEqual({ state: "read", list: { ...checklist.fresh, runs: [last] } });
  });

  const whole = write(checklist.fresh);
  it.each([
    { what: "cut short", xml: whole.slice(0, 200) },
    { what: "empty", xml: "" },
    { what: "no XML", xml: "checklist" },
    { what: "of another namespace", xml: whole.replace(namespace, "urn:other") },
    { what: "without a version", xml: whole.replace(' version="1"', "") },
    { what: "with a broken version", xml: whole.replace('version="1"', 'version="one"') },
    { what: "with a stage nobody knows", xml: whole.replace('"stage":"oven"', '"stage":"kiln"') },
    { what: "with an item twice", xml: whole.replace('"id":"rated"', '"id":"papers"') },
    { what: "with broken JSON", xml: whole.replace("[", "(") },
  ])("tells a part $what as damaged, and keeps it", ({ xml }) => expect(readBack(xml)).toEqual({ state: "damaged", xml }));

  it("tells a part of a newer version as such, whatever it holds", () => {
    const xml = `<checklist xmlns="${namespace}" version="2"><leaf/></checklist>`;
    expect(readBack(xml)).toEqual({ state: "newer", version: 2, xml });
  });
});

describe("the place of the list", () => {
  const workbook = (parts: Record<string, string>) => (place: string) => Promise.resolve(parts[place]);

  it("is the first one in a workbook without a list", async () =>
    expect(await find(workbook({}), parser)).toEqual({ place: namespace, unread: [] }));

  it("is never one that holds a damaged or newer part", async () => {
    const newer = `<checklist xmlns="${placeOf(2)}" version="7"/>`;
    const found = await find(workbook({ [namespace]: "broken", [placeOf(2)]: newer }), parser);
    expect(found).toEqual({
      place: placeOf(3),
      unread: [
        { state: "damaged", xml: "broken" },
        { state: "newer", version: 7, xml: newer },
      ],
    });
  });

  it("is found again behind a damaged part", async () => {
    const xml = write(checklist.fresh, placeOf(2));
    const found = await find(workbook({ [namespace]: "broken", [placeOf(2)]: xml }), parser);
    expect(found).toMatchObject({ place: placeOf(2), list: checklist.fresh });
  });

  it("is none once every place holds something that cannot be read", async () =>
    expect(await find(() => Promise.resolve("broken"), parser)).toBeUndefined());
});

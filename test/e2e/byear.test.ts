import { needing } from "../needing";
import { type Sheet, type Site, site } from "./driver";

const typed: Readonly<Record<string, string>> = {
  kind: "mine",
  count: "100",
  thickness: "3/4",
  width: "3/4",
  length: "5",
  wood: "maple, silver",
};

/** Nothing is looked at and nothing is pointed at: keys, and what a screen reader is told. */
needing("browser")("a hundred blanks by keyboard and ear", () => {
  let made: Site;
  let sheet: Sheet;
  const press = (...keys: string[]) => keys.reduce((before, key) => before.then(() => sheet.page.keyboard.press(key)), Promise.resolve());
  const here = async () => (await sheet.page.locator("#here").textContent()) ?? "";
  const spoken = async () => (await sheet.page.locator("#spoken").textContent()) ?? "";
  /** What has the focus, by its role and name. */
  const focused = () =>
    sheet.page.evaluate(() => {
      const { activeElement: at } = document;
      return `${at?.getAttribute("role") ?? at?.tagName.toLowerCase()}: ${(at?.getAttribute("aria-label") ?? at?.textContent ?? "").trim()}`;
    });
  /** Presses a key until what is heard is right; the keyboard of a person who listens after each stroke. */
  async function until(key: string, heard: () => Promise<string>, due: RegExp, most: number): Promise<string> {
    for (let strokes = 0; ; strokes++) {
      const now = await heard();
      if (due.test(now)) return now;
      if (strokes === most) throw new Error(`after ${most} times ${key}: “${now}”, and ${due.source} was due`);
      await press(key);
      await sheet.page
        .waitForFunction((was) => document.querySelector("#here")?.textContent !== was, now, { timeout: 400 })
        .catch(() => undefined);
    }
  }
  async function turn(name: string): Promise<void> {
    await until("F6", focused, /^tab: /, 8);
    await until("ArrowRight", focused, new RegExp(`^tab: ${name}$`), 20);
    await press("Enter", "Escape");
    expect(await focused()).toMatch(/^textbox: /);
  }

  beforeAll(async () => {
    made = await site();
  });
  afterAll(async () => {
    await made?.close();
  });

  it("types them in, hears each answer, and hears the plan", async () => {
    sheet = await made.visit();
    await turn("Blanks");
    await until("ArrowDown", here, /^kind, row \d+: empty$/, 40);
    for (const [heading, value] of Object.entries(typed)) {
      await until("Tab", here, new RegExp(`^${heading}, row \\d+: `), 12);
      await sheet.keys(value);
      await press("Tab");
      await until("Escape", spoken, new RegExp(`^${heading}, row \\d+: ${value}`), 8);
    }
    expect(await spoken()).toMatch(/^wood, row \d+: maple, silver; bake about \d+ min, likely \d+ to \d+; gravity 0\.\d\d; voids \d+%$/);
    await turn("Loads");
    await press("Control+Home");
    expect(await until("ArrowDown", here, /blanks?: /, 6)).toMatch(/row \d+: 197 blanks: \d+ loads in \d+ pulls, done .+, mix \d+ qt$/);
  });
});

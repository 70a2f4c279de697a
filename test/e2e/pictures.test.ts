import { readFileSync } from "node:fs";
import { join } from "node:path";
import { scenes, wordsOf } from "../../tool/scenes";
import { needing } from "../needing";
import { type Site, site } from "./driver";

const root = join(__dirname, "../..");

needing("browser")("the README's pictures", () => {
  let made: Site;
  beforeAll(async () => {
    made = await site();
  });
  afterAll(async () => {
    await made?.close();
  });

  it("are those of the scenes", () => {
    const shown = [...readFileSync(join(root, "README.md"), "utf8").matchAll(/\]\(docs\/(\w+)\.png\)/g)].map(([, name]) => name);
    expect(shown).toEqual(scenes.map(({ name }) => name));
  });

  it.each(scenes)("$name shows the words that the page shows now: if not, take it anew by npm run pictures", async ({ name, arrange }) => {
    const { page } = await made.visit();
    await arrange(page);
    expect(await wordsOf(page)).toBe(readFileSync(join(root, `docs/${name}.txt`), "utf8"));
    await page.context().close();
  });
});

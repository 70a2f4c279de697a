import { writeFileSync } from "node:fs";
import { join } from "node:path";
import { launch } from "./browser";
import { dist, freshen } from "./fresh";
import { scenes, wordsOf } from "./scenes";
import { serve } from "./serve";

const docs = join(__dirname, "..", "docs");

/** Takes the README's pictures from the running page, and beside each the words it shows: a test compares them. */
async function pictures(): Promise<void> {
  await freshen();
  const served = await serve(dist, { port: 0 });
  const browser = await launch();
  try {
    for (const { name, arrange } of scenes) {
      const page = await (await browser.newContext({ viewport: { width: 1280, height: 800 } })).newPage();
      await page.goto(served.address);
      await page.waitForSelector("html[data-ready]");
      await arrange(page);
      await page.waitForTimeout(500);
      await page.screenshot({ path: join(docs, `${name}.png`) });
      writeFileSync(join(docs, `${name}.txt`), await wordsOf(page));
    }
  } finally {
    await browser.close();
    await served.close();
  }
}

pictures().catch((error: unknown) => {
  console.error(error);
  process.exit(1);
});

import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { launch } from "./browser";
import { build } from "./build";
import { serve } from "./serve";

/** Takes the README's picture from the running page. */
async function pictures(): Promise<void> {
  const folder = mkdtempSync(join(tmpdir(), "pictures-"));
  await build(folder);
  const served = await serve(folder, { port: 0 });
  const browser = await launch();
  try {
    const page = await browser.newPage({ viewport: { width: 1280, height: 800 } });
    await page.goto(served.address);
    await page.waitForSelector("html[data-ready]");
    await page.waitForTimeout(500);
    await page.screenshot({ path: join(__dirname, "..", "docs", "page.png") });
  } finally {
    await browser.close();
    await served.close();
    rmSync(folder, { recursive: true });
  }
}

pictures().catch((error: unknown) => {
  console.error(error);
  process.exit(1);
});

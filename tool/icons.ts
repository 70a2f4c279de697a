import { readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { chromium } from "playwright-core";
import { browserArgs, findBrowser } from "./browser";

/** Draws the icons in assets/ from the mark's two drawings, and the picture of a run: run it again when a drawing changes. */

const folder = join(__dirname, "../assets");
const sizes = { 16: "mark-small.svg", 32: "mark.svg", 64: "mark.svg", 80: "mark.svg" };
/** Sharp on a fine screen and on paper. */
const run = { width: 1260, height: 198 };

async function main(): Promise<void> {
  const executablePath = findBrowser();
  if (!executablePath) throw new Error("icons are drawn by a browser: install Chrome, Chromium or Edge");
  const browser = await chromium.launch({ executablePath, args: browserArgs });
  const page = await browser.newPage();
  const draw = async (drawing: string, size: { width: number; height: number }, name: string) => {
    await page.setViewportSize(size);
    await page.setContent(
      `<style>body { margin: 0; } svg { display: block; width: 100vw; height: 100vh; }</style>${readFileSync(join(folder, drawing), "utf8")}`,
    );
    writeFileSync(join(folder, name), await page.screenshot({ omitBackground: true }));
  };
  for (const [side, drawing] of Object.entries(sizes))
    await draw(drawing, { width: Number(side), height: Number(side) }, `mark-${side}.png`);
  await draw("run.svg", run, "run.png");
  await browser.close();
}

main();

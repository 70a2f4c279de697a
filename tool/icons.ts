import { readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { chromium } from "playwright-core";
import { browserArgs, findBrowser } from "./browser";

/** Draws the icons in assets/ from the mark's two drawings: run it again when a drawing changes. */

const folder = join(__dirname, "../assets");
const sizes = { 16: "mark-small.svg", 32: "mark.svg", 64: "mark.svg", 80: "mark.svg" };

async function main(): Promise<void> {
  const executablePath = findBrowser();
  if (!executablePath) throw new Error("icons are drawn by a browser: install Chrome, Chromium or Edge");
  const browser = await chromium.launch({ executablePath, args: browserArgs });
  const page = await browser.newPage();
  for (const [side, drawing] of Object.entries(sizes)) {
    await page.setViewportSize({ width: Number(side), height: Number(side) });
    await page.setContent(
      `<style>body { margin: 0; } svg { display: block; width: 100vw; height: 100vh; }</style>${readFileSync(join(folder, drawing), "utf8")}`,
    );
    writeFileSync(join(folder, `mark-${side}.png`), await page.screenshot({ omitBackground: true }));
  }
  await browser.close();
}

main();

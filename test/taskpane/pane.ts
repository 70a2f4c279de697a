import { cpSync, mkdirSync, mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { gzipSync } from "node:zlib";
import { build } from "esbuild";
import type { Browser, BrowserContextOptions, Frame, Page } from "playwright-core";
import { atStart } from "../../tool/bundle";
import { dist } from "../../tool/fresh";
import { type Served, serve } from "../../tool/serve";
import { paneScripts } from "../built";

const harness = `<!doctype html><html lang="en"><meta charset="utf-8"><title>Sheet and pane</title><link rel="stylesheet" href="harness.css">
<label>A1 <input id="grid"></label><iframe title="Pane"></iframe><script src="harness.js"></script></html>`;
const looks = "html,body{height:100%;margin:0}label{display:none}iframe{display:block;width:100%;height:100%;border:0}";

export interface Bench {
  readonly served: Served;
  readonly size: number;
  readonly folder: string;
  close(): Promise<void>;
}

/** The built pane on loopback, framed by a page that hands it a sheet in memory. */
export async function bench(): Promise<Bench> {
  const folder = mkdtempSync(join(tmpdir(), "porewise-pane-"));
  const { outputFiles } = await build({
    entryPoints: [join(__dirname, "harness.ts")],
    bundle: true,
    format: "iife",
    target: "es2022",
    write: false,
  });
  mkdirSync(join(folder, "workbook"));
  const files: Record<string, string | Uint8Array> = {
    "harness.html": harness,
    "harness.css": looks,
    "harness.js": outputFiles[0].contents,
    ...Object.fromEntries(paneScripts()),
  };
  for (const [name, content] of Object.entries(files)) writeFileSync(join(folder, name), content);
  for (const name of ["taskpane.css", "pane.html", "halt.js"]) cpSync(join(dist, name), join(folder, name));
  const served = await serve(folder, { port: 0 });
  const close = async () => {
    await served.close();
    rmSync(folder, { recursive: true });
  };
  const size = atStart(paneScripts(), "taskpane.js").reduce((sum, bytes) => sum + gzipSync(bytes).length, 0);
  return { served, size, folder, close };
}

export interface Opened {
  readonly page: Page;
  readonly pane: Frame;
  /** Addresses asked for that are not ours, and what went wrong in the page. */
  readonly strays: string[];
  readonly troubles: string[];
}

export async function open(browser: Browser, { served }: Bench, options: BrowserContextOptions = {}): Promise<Opened> {
  const context = await browser.newContext({ viewport: { width: 320, height: 900 }, ...options });
  const strays: string[] = [];
  const troubles: string[] = [];
  const page = await context.newPage();
  page.on(
    "request",
    (request) => !request.url().startsWith(served.address) && !request.url().startsWith("blob:") && strays.push(request.url()),
  );
  page.on("pageerror", (error) => troubles.push(String(error)));
  page.on("console", (message) => /error|warning/.test(message.type()) && !/404/.test(message.text()) && troubles.push(message.text()));
  await page.goto(`${served.address}harness.html`);
  const pane = await paneOf(page);
  return { page, pane, strays, troubles };
}

export async function paneOf(page: Page): Promise<Frame> {
  await page.locator("iframe").contentFrame().locator("pore-app #panel-safety").waitFor({ state: "attached" });
  return page.frames().find((frame) => frame.url().endsWith("pane.html"))!;
}

/** When everything that moves has come to rest and is drawn. */
export const settled = (pane: Frame): Promise<unknown> =>
  pane.evaluate(async () => {
    const frame = () => new Promise((drawn) => requestAnimationFrame(drawn));
    await frame();
    await Promise.allSettled(document.getAnimations().map(({ finished }) => finished));
    await frame();
  });

/** Keys that are sent at one go: each answer that is waited for takes as long as several of them. */
const atOnce = 8;

/** Presses Tab until an element with these words, or this id, has the focus. */
export async function tabTo(page: Page, pane: Frame, wanted: string, most = 400): Promise<void> {
  // Once it is there, keys that are under way leave it there.
  const watch = await pane.evaluateHandle((words) => {
    const isThere = () => {
      const at = document.activeElement;
      const label = at?.getAttribute("aria-label") ?? at?.textContent?.replace(/\s+/g, " ").trim() ?? "";
      return at !== null && at !== document.body && (words.startsWith("#") ? at.id === words.slice(1) : label.startsWith(words));
    };
    const hold = (event: KeyboardEvent) => {
      if (event.key !== "Tab" || !isThere()) return;
      event.preventDefault();
      event.stopImmediatePropagation();
    };
    addEventListener("keydown", hold, true);
    return { isThere, end: () => removeEventListener("keydown", hold, true) };
  }, wanted);
  try {
    for (let i = 0; i < most; i += atOnce) {
      if (await watch.evaluate(({ isThere }) => isThere())) return;
      await Promise.all(Array.from({ length: atOnce }, () => page.keyboard.press("Tab")));
    }
  } finally {
    await watch.evaluate(({ end }) => end());
    await watch.dispose();
  }
  throw new Error(`Tab never came to ${wanted}`);
}

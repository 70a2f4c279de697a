import type { Browser } from "playwright-core";
import { findBrowser, launch } from "../../tool/browser";
import { dist, freshen } from "../../tool/fresh";
import { serve } from "../../tool/serve";

/** Milliseconds until page and pane can be used, and until a keystroke has its answer: the best of a few, as other work only adds. */
export interface Screens {
  readonly "page interactive": number;
  readonly "pane interactive": number;
  readonly "edit settled": number;
}

const visits = 6;

async function visit(browser: Browser, address: string): Promise<Screens> {
  const context = await browser.newContext({ viewport: { width: 1280, height: 800 } });
  try {
    const page = await context.newPage();
    await page.addInitScript(() => {
      new MutationObserver(() => {
        if (document.documentElement?.dataset.ready) performance.mark("page ready");
      }).observe(document, { attributes: true, subtree: true, attributeFilter: ["data-ready"] });
    });
    const marked = (name: string) => performance.getEntriesByName(name)[0]?.startTime;
    await page.goto(address);
    await page.waitForSelector("html[data-ready]");
    const ready = (await page.evaluate(marked, "page ready")) ?? Number.NaN;
    await page.locator("#functions").click();
    await page.locator("#pane iframe").contentFrame().locator("pore-app #panel-safety").waitFor({ state: "attached" });
    const pane = page.frames().find((frame) => frame.url().endsWith("pane.html"))!;
    const shown = (await pane.evaluate(marked, "pane shown")) ?? Number.NaN;
    await pane.locator("#tab-functions").click();
    await pane.locator("#ask-FILL").click();
    await pane.locator("#field-chamber").fill("6");
    await pane.locator("#field-stack").fill("5");
    const edit = await pane.evaluate(async () => {
      const field = document.querySelector<HTMLInputElement>("#field-solids")!;
      let slowest = 0;
      for (const text of ["1", "10", "104", "104.", "104.5"]) {
        const from = performance.now();
        field.value = text;
        field.dispatchEvent(new Event("input", { bubbles: true }));
        await document.querySelector<HTMLElement & { updateComplete: Promise<unknown> }>("pore-form")!.updateComplete;
        slowest = Math.max(slowest, performance.now() - from);
      }
      return slowest;
    });
    return { "page interactive": ready, "pane interactive": shown, "edit settled": edit };
  } finally {
    await context.close();
  }
}

/** Nothing where there is no browser. */
export async function screens(): Promise<Screens | undefined> {
  if (!findBrowser()) return undefined;
  await freshen();
  const served = await serve(dist, { port: 0 });
  const browser = await launch();
  try {
    const seen: Screens[] = [];
    for (let i = 0; i < visits; i++) seen.push(await visit(browser, served.address));
    const best = (name: keyof Screens) => Math.min(...seen.map((one) => one[name]));
    return {
      "page interactive": best("page interactive"),
      "pane interactive": best("pane interactive"),
      "edit settled": best("edit settled"),
    };
  } finally {
    await browser.close();
    await served.close();
  }
}

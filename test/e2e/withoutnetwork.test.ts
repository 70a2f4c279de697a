import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { dist } from "../../tool/fresh";
import { serve } from "../../tool/serve";
import { needing } from "../needing";
import { phone, site } from "./driver";
import { Mortal } from "./killed";

needing("browser")("the page without a network", () => {
  it("starts from what it brought along, sheet, run and help", async () => {
    const made = await site();
    try {
      const context = await made.stranger({ ...phone, serviceWorkers: "allow" });
      const sheet = await made.visit(context);
      await sheet.page.evaluate(() => navigator.serviceWorker.ready);
      await sheet.page.locator("#saved[data-state=kept]").waitFor({ state: "attached" });
      await made.served.close();
      await sheet.page.reload();
      await sheet.ready();
      const run = sheet.page.frameLocator("#alone iframe");
      await run.locator("#run-begin").waitFor();
      await sheet.page.locator("#to-sheet").tap();
      await sheet.shows("A1", /^Porewise/);
      const help = await context.newPage();
      await help.goto(`${made.served.address}help/bake.html`);
      expect(await help.locator("h1").textContent()).toBe("How long do I bake it?");
    } finally {
      await made.close();
    }
  });
});

needing("browser")("a browser that is killed", () => {
  it("finds the run at the very step and second, without a network too", async () => {
    const profile = mkdtempSync(join(tmpdir(), "profile-"));
    const served = await serve(dist, { port: 0 });
    const mortal = new Mortal(profile);
    const open = async () => {
      const page = await mortal.page();
      await page.goto(served.address);
      await page.waitForSelector("html[data-ready]");
      return { page, run: page.frameLocator("#alone iframe") };
    };
    try {
      const first = await open();
      await first.page.evaluate(async () => void (await navigator.serviceWorker.ready));
      await first.page.locator("#saved[data-state=kept]").waitFor({ state: "attached" });
      await first.run.locator("#run-begin").click();
      for (const kind of ["choose", "safety", "mix", "load", "vacuum"]) {
        await first.run.locator(`.run-step[data-kind=${kind}]`).waitFor();
        await first.run.locator("#run-touch").click();
        if (await first.run.locator("#run-confirm").count()) await first.run.locator("#run-confirm").click();
      }
      await first.run.locator(".run-count").waitFor();
      const due = await first.run.locator(".run-clock").textContent();
      await mortal.kill();
      await served.close();
      const second = await open();
      await second.run.locator(".run-step[data-kind=vacuum] .run-count").waitFor();
      expect(await second.run.locator(".run-clock").textContent()).toBe(due);
    } finally {
      await mortal.kill();
      await served.close().catch(() => undefined);
      rmSync(profile, { recursive: true, force: true, maxRetries: 5 });
    }
  });
});

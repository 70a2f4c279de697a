import type { BrowserContext, FrameLocator } from "playwright-core";
import { kindNames } from "../../src/run/stepkinds";
import { needing } from "../needing";
import { eachAs, phone, type Sheet, type Site } from "./driver";

const hour = 3_600_000;
/** A morning on which a run fits into the hours of the invented shop. */
const morning = new Date(2026, 2, 12, 8, 30).getTime();

needing("browser")("a run on a phone", () => {
  let made: Site;
  let context: BrowserContext;
  let sheet: Sheet;
  let run: FrameLocator;

  const open = async () => {
    sheet = await made.visit(context);
    run = sheet.page.frameLocator("#alone iframe");
    await run.locator("pore-run h2").waitFor();
  };
  const title = () => run.locator("#run-title").textContent();
  /** Goes on at once, whatever is asked. */
  const press = async () => {
    await run.locator("#run-touch").tap();
    if (await run.locator("#run-confirm").count()) await run.locator("#run-confirm").tap();
  };
  const touch = async (words: RegExp) => {
    await run.locator("#run-touch").filter({ hasText: words }).waitFor();
    await press();
  };
  const to = async (kind: string) => {
    await run.locator(`.run-step[data-kind=${kind}]`).waitFor();
  };
  const begin = async () => {
    await run.locator("input[value=now]").check();
    await run.locator("#run-begin").tap();
    await to("choose");
  };

  eachAs(
    "stranger",
    async (around, stranger) => {
      [made, context] = [around, stranger];
      await context.clock.install({ time: morning });
      await open();
    },
    phone,
  );

  it("opens alone, takes what Today has, and goes to the price tag by touch alone; every target is 44 px or more", async () => {
    expect(await sheet.page.locator("#grid").isVisible()).toBe(false);
    expect(await run.locator("#run-0-0-pick").inputValue()).toBe("spalted boxelder");
    expect(await run.locator("#run-0-0-count").inputValue()).toBe("4");
    await begin();
    const seen: string[] = [];
    for (;;) {
      const kind = (await run.locator(".run-step").getAttribute("data-kind"))!;
      seen.push(kind);
      const small = await run.locator("pore-run :is(button:not(.plain), input, select, summary)").evaluateAll((all) =>
        all
          .filter((one) => {
            const { width, height } = one.closest("label.run-choice")?.getBoundingClientRect() ?? one.getBoundingClientRect();
            return width > 0 && (height < 44 || width < 44);
          })
          .map((one) => one.id || one.textContent),
      );
      expect(small).toEqual([]);
      expect((await run.locator("#run-touch").boundingBox())!.height).toBeGreaterThanOrEqual(48);
      if (kind === "price") break;
      const before = await run.locator(".run-step").innerHTML();
      await press();
      await sheet.page.waitForFunction(
        (old) => document.querySelector<HTMLIFrameElement>("#alone iframe")!.contentDocument!.querySelector(".run-step")!.innerHTML !== old,
        before,
      );
    }
    expect([...new Set(seen)]).toEqual([...kindNames]);
    await touch(/Finish the run/);
    expect(await title()).toBe("The run is over");
  });

  it("asks once before the pump and before a step is ended early, shows the list, and goes on when told to", async () => {
    await begin();
    await touch(/Weighed/);
    await to("safety");
    await run.locator("#run-touch").tap();
    await run
      .locator(".run-doubt")
      .filter({ hasText: /^\s*0 of \d+ points of the safety list are checked/ })
      .waitFor();
    await run.locator("#run-leave").tap();
    await run.locator(".run-safety input").first().waitFor();
    for (const box of await run.locator(".run-safety input").all()) await box.tap();
    for (const words of [/All checked/, /Mixed/, /Loaded/, /Start vacuum/]) await touch(words);
    await run.locator(".run-count").waitFor();
    await run.locator("#run-touch").tap();
    await run.locator(".run-doubt").filter({ hasText: "Have the bubbles really stopped?" }).waitFor();
    const answer = (await run.locator("#run-confirm").boundingBox())!;
    expect(answer.y + answer.height).toBeLessThanOrEqual(phone.viewport.height);
    await run.locator("#run-leave").tap();
    await run.locator(".run-count").waitFor();
    await context.clock.fastForward(4 * hour);
    await run.locator("#run-touch").tap();
    await to("air");
  });

  it("counts down by the wall clock through a reload and a closed tab, says when time is up, and reads a leak from two readings", async () => {
    await begin();
    for (const [kind, words] of [
      ["choose", /Weighed/],
      ["safety", /Continue/],
      ["mix", /Mixed/],
      ["load", /Loaded/],
      ["vacuum", /Start vacuum/],
    ] as const) {
      await to(kind);
      await touch(words);
    }
    const left = run.locator(".run-count");
    await left.filter({ hasText: /^(4:00:00|3:59:\d\d)$/ }).waitFor();
    await run.locator("#run-gauge").fill("28");
    await run.locator("#run-read").tap();
    await run.locator(".run-readings li").first().waitFor();
    await context.clock.fastForward(10 * 60_000);
    await run.locator("#run-gauge").fill("27");
    await run.locator("#run-read").tap();
    expect(await run.locator(".run-leak").textContent()).toMatch(/^Loses 0\.1 inHg a minute/);
    await sheet.page.reload();
    await run
      .locator(".run-count")
      .filter({ hasText: /^3:4\d:\d\d$/ })
      .waitFor();
    await sheet.page.close();
    await context.clock.fastForward(4 * hour);
    await open();
    await run.locator(".run-count[data-over=true]").waitFor();
    expect(await run.locator(".run-over").textContent()).toBe("time is up");
    expect(await run.locator(".run-readings li").count()).toBe(2);
  });

  it("is written into Run Log, Resin Book and Price Tag after it showed what it will write, undone whole and done again", async () => {
    await begin();
    await run.locator("#entry-before-1").fill("82.4");
    for (const kind of kindNames.slice(0, -1)) {
      await to(kind);
      if (kind === "drain") await run.locator("#entry-drained-1").fill("157");
      if (kind === "weigh") await run.locator("#entry-cured-1").fill("149");
      await press();
      if (await run.locator(`.run-step[data-kind=${kind}] #run-touch`).count()) {
        await context.clock.fastForward(hour);
        if (["vacuum", "bake"].includes(kind)) await press();
      }
    }
    await to("price");
    const filled = () =>
      sheet.page.evaluate(async () => {
        const { host } = document.querySelector<HTMLIFrameElement>("#alone iframe")!.contentDocument!.querySelector<any>("pore-run");
        const names = ["RunLog", "ResinRuns", "CostLines", "RunPieces", "RunSpoiled"];
        return JSON.stringify(await Promise.all(names.map((name) => host.contents(name))));
      });
    const before = await filled();
    await run.locator("#run-look").tap();
    const shown = await run.locator(".run-record").textContent();
    for (const words of ["Run Log", "Resin Book", "Price Tag", "82.4, 157, 149"]) expect(shown).toContain(words);
    expect(await filled()).toBe(before);
    await run.locator("#run-write").tap();
    await run.locator("#run-recorded").filter({ hasText: "Written down." }).waitFor();
    const after = await filled();
    expect(after).toContain("82.4,157,149");
    await run.locator("#run-unwrite").tap();
    await run.locator("#run-recorded").filter({ hasText: "as they were" }).waitFor();
    expect(await filled()).toBe(before);
    await run.locator("#run-look").tap();
    await run.locator("#run-write").tap();
    await run.locator("#run-unwrite").waitFor();
    expect(await filled()).toBe(after);
  });
});

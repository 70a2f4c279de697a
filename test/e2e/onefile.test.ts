import { mkdtempSync, readFileSync, rmSync, statSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { pathToFileURL } from "node:url";
import { read } from "@e965/xlsx";
import puppeteer, { type Browser, type Page } from "puppeteer-core";
import { browserArgs } from "../../tool/browser";
import { dist } from "../../tool/fresh";
import { oneFile } from "../../tool/onefile";
import { findProgram } from "../../tool/programs";
import { type Served, serve } from "../../tool/serve";
import { workbookPath } from "../built";
import { needing } from "../needing";

const patience = { timeout: 150_000 };
const folder = mkdtempSync(join(tmpdir(), "one file, #1 "));
const file = join(folder, "porewise.html");
let served: Served;

beforeAll(async () => {
  writeFileSync(file, await oneFile(dist));
  served = await serve(dist, { port: 0 });
});
afterAll(async () => {
  await served.close();
  rmSync(folder, { recursive: true });
});

it("is one file of at most 4 MB, with every package's licence in it", () => {
  expect(statSync(file).size).toBeLessThan(4_000_000);
  const text = readFileSync(file, "utf8");
  for (const words of ["GNU LESSER GENERAL PUBLIC LICENSE", "chart.js", "bootstrap", "font-awesome"]) expect(text).toContain(words);
  for (const name of ["owl.iife.min.js", "o_spreadsheet.min.iife.js"])
    expect(text).toContain(readFileSync(join(dist, "vendor", name), "utf8"));
});

/** Through the vendor-neutral protocol in Firefox, through Chromium's own there. */
const browsers = {
  browser: () => puppeteer.launch({ executablePath: findProgram("browser"), args: browserArgs, protocolTimeout: 170_000 }),
  firefox: () => puppeteer.launch({ browser: "firefox", executablePath: findProgram("firefox"), headless: true, protocolTimeout: 170_000 }),
};

describe.each([
  { program: "browser", from: "a disk" },
  { program: "firefox", from: "a disk" },
  { program: "firefox", from: "a host" },
] as const)("the page from $from in $program", ({ program, from }) => {
  needing(program)("", () => {
    let browser: Browser;
    let page: Page;
    const troubles: string[] = [];
    const address = () => (from === "a disk" ? pathToFileURL(file).href : served.address);

    const open = async () => {
      await page.goto(address(), patience);
      await page.waitForSelector("html[data-ready]", patience);
    };
    const words = (selector: string) => page.$eval(selector, (element) => element.textContent ?? "");

    beforeAll(async () => {
      browser = await browsers[program]();
      page = await browser.newPage();
      await page.setViewport({ width: 1280, height: 800 });
      page.on("pageerror", (error) => troubles.push(String(error)));
      await open();
    });
    afterAll(() => browser?.close());

    it("opens on the workbook, its functions at work", async () =>
      expect(await words("#mirror")).toMatch(/Porewise [\d.]+\d\. Self-check compares/));

    it("shows the side pane, which is handed the sheet", async () => {
      await page.click("#functions");
      await page.waitForFunction(
        () => document.querySelector<HTMLIFrameElement>("#pane iframe")?.contentDocument?.querySelector("#panel-safety .item"),
        patience,
      );
    });

    it("keeps work over a reload, or says that it does not", async () => {
      await page.waitForFunction(() => /kept|failed/.test(document.querySelector<HTMLElement>("#saved")!.dataset.state ?? ""), patience);
      if ((await page.$eval("#saved", (element) => (element as HTMLElement).dataset.state)) === "failed") {
        expect(await words("#saved")).toMatch(/^not saved/);
        return;
      }
      await open();
      expect(await words("#saved")).not.toMatch(/^not saved/);
    });

    it("opens an xlsx file", async () => {
      const input = (await page.$("input#file"))!;
      await input.uploadFile(workbookPath("live", "SI", "empty"));
      await page.waitForFunction(() => document.querySelector("#workbooks")!.textContent === "porewise-live-si-empty", patience);
    });

    it("saves one", async () => {
      await page.evaluate(() => {
        const real = URL.createObjectURL;
        URL.createObjectURL = (blob) => {
          Object.assign(globalThis, { given: blob });
          return real(blob);
        };
      });
      await page.click("#save");
      await page.waitForFunction("globalThis.given", patience);
      const bytes = await page.evaluate(async () => [...new Uint8Array(await (globalThis as any).given.arrayBuffer())]);
      expect(read(Uint8Array.from(bytes)).SheetNames).toContain("Handout");
    });

    it("meets no error on the way", () => expect(troubles).toEqual([]));
  });
});

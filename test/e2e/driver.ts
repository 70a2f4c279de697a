import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import type { Browser, BrowserContext, BrowserContextOptions, Page } from "playwright-core";
import { launch } from "../../tool/browser";
import { dist } from "../../tool/fresh";
import { go, turn } from "../../tool/scenes";
import { type Served, serve } from "../../tool/serve";
import { list, make, press, said } from "./books";

/** A browser as a phone has it. */
export const phone = { viewport: { width: 390, height: 844 }, hasTouch: true, isMobile: true } as const;

/** The page as a person uses it, and what its mirror table says. */
export class Sheet {
  constructor(readonly page: Page) {}

  words(address: string): Promise<string | null> {
    return this.page.locator(`#mirror [data-cell="${address}"]`).textContent();
  }

  async value(address: string): Promise<string> {
    return (await this.page.locator(`#mirror [data-cell="${address}"]`).getAttribute("data-value")) ?? "";
  }

  async shows(address: string, expected: string | RegExp): Promise<void> {
    const wanted = typeof expected === "string" ? { text: expected } : { pattern: expected.source };
    const shown = ({ at, text, pattern }: { at: string; text?: string; pattern?: string }) => {
      const seen = document.querySelector(`#mirror [data-cell="${at}"]`)?.textContent ?? "";
      return pattern === undefined ? seen === text : new RegExp(pattern).test(seen);
    };
    try {
      await this.page.waitForFunction(shown, { at: address, ...wanted }, { timeout: 15_000 });
    } catch {
      throw new Error(`${address} shows “${await this.words(address)}”, and ${expected} was due`);
    }
  }

  go(address: string): Promise<void> {
    return go(this.page, address);
  }

  /** Keys come at a person's pace: faster ones can overtake the engine's editor. */
  keys(typed: string): Promise<void> {
    return this.page.keyboard.type(typed, { delay: 20 });
  }

  async type(address: string, typed: string): Promise<void> {
    await this.go(address);
    await this.keys(typed);
    await this.page.keyboard.press("Enter");
  }

  turn(name: string): Promise<void> {
    return turn(this.page, name);
  }

  ready(): Promise<unknown> {
    return this.page.waitForSelector("html[data-ready]");
  }

  async reload(): Promise<void> {
    await this.page.reload();
    await this.ready();
  }

  kept(): Promise<void> {
    return this.page.locator("#saved[data-state=kept]").waitFor();
  }

  /** Hears from now on how keeping stands, and answers with a wait for states in turn: one may pass while nobody looks. */
  async hear(): Promise<(...states: string[]) => Promise<unknown>> {
    await this.page.evaluate(() => {
      const saved = document.querySelector<HTMLElement>("#saved")!;
      const heard: string[] = [];
      Object.assign(globalThis, { heard });
      new MutationObserver(() => heard.push(saved.dataset.state!)).observe(saved, { attributeFilter: ["data-state"] });
    });
    const passed = (wanted: readonly string[]) => {
      const { heard } = globalThis as unknown as { heard: readonly string[] };
      return wanted.length === heard.reduce((next, state) => next + Number(state === wanted[next]), 0);
    };
    return (...states) => this.page.waitForFunction(passed, states);
  }

  /** Does what changes the workbook, and waits until that is kept. */
  async keeps(change: () => Promise<unknown>): Promise<void> {
    const heard = await this.hear();
    await change();
    await heard("waiting", "kept");
  }

  /** Gives a file to the page, as if chosen from disk. */
  async give(file: string | { name: string; mimeType: string; buffer: Buffer }): Promise<void> {
    await this.page.locator("#file").setInputFiles(file);
  }

  /** Presses a button of the question that the page asks. */
  answer(words: string): Promise<void> {
    return this.page.locator("#ask").getByRole("button", { name: words, exact: true }).click();
  }
}

export interface Site {
  readonly served: Served;
  readonly browser: Browser;
  /** For files of a test. */
  readonly folder: string;
  /** What went wrong in any page, and which addresses were asked for. */
  readonly troubles: string[];
  readonly requests: string[];
  /** The addresses of others among them. */
  strays(): string[];
  /** A browser with nothing kept; what it is asked for is seen, so no service worker answers unless told otherwise. */
  stranger(options?: BrowserContextOptions): Promise<BrowserContext>;
  /** A browser that keeps one blank workbook: it starts sooner than one that is shown the invented shop. */
  returning(options?: BrowserContextOptions): Promise<BrowserContext>;
  visit(context?: BrowserContext): Promise<Sheet>;
  close(): Promise<void>;
}

/** What a browser keeps of a person who made a blank workbook, threw the first one away, and left. */
async function leaveBlank(sheet: Sheet): Promise<Awaited<ReturnType<BrowserContext["storageState"]>>> {
  await make(sheet, "blank: one empty sheet");
  await list(sheet);
  await press(sheet, "Invented shop", "Delete");
  await sheet.answer("Delete");
  await said(sheet).getByText("is deleted").waitFor();
  await sheet.kept();
  const context = sheet.page.context();
  const state = await context.storageState({ indexedDB: true });
  await context.close();
  return state;
}

/** The built page on loopback, and a browser to visit it with. */
export async function site(): Promise<Site> {
  const folder = mkdtempSync(join(tmpdir(), "page-"));
  const served = await serve(dist, { port: 0 });
  const browser = await launch();
  const troubles: string[] = [];
  const requests: string[] = [];
  const stranger = (options: BrowserContextOptions = {}) =>
    browser.newContext({ viewport: { width: 1280, height: 800 }, acceptDownloads: true, serviceWorkers: "block", ...options });
  const visit = async (context?: BrowserContext) => {
    const sheet = new Sheet(await (context ?? (await stranger())).newPage());
    sheet.page.on("console", (message) => message.type() === "error" && troubles.push(message.text()));
    sheet.page.on("pageerror", (error) => troubles.push(String(error)));
    sheet.page.on("request", (request) => requests.push(request.url()));
    await sheet.page.goto(served.address);
    await sheet.ready();
    return sheet;
  };
  let blank: ReturnType<typeof leaveBlank> | undefined;
  return {
    ...{ served, browser, folder, troubles, requests, stranger, visit },
    strays: () => requests.filter((url) => !url.startsWith(served.address) && !/^(data|blob):/.test(url)),
    async returning(options) {
      blank ??= stranger().then(async (context) => leaveBlank(await visit(context)));
      return stranger({ ...options, storageState: await blank });
    },
    async close() {
      await browser.close();
      await served.close();
      rmSync(folder, { recursive: true });
    },
  };
}

/** A site for the tests around, and for each of them a browser of its own; none may leave trouble behind. */
export function eachAs(
  who: "stranger" | "returning",
  begin: (made: Site, context: BrowserContext) => Promise<void>,
  options?: BrowserContextOptions,
): void {
  let made: Site;
  let context: BrowserContext;
  beforeAll(async () => {
    made = await site();
  });
  afterAll(() => made?.close());
  beforeEach(async () => {
    context = await made[who](options);
    await begin(made, context);
  });
  afterEach(async () => {
    await context.close();
    // What the browser makes of broken XML is a page of its own with a style of its own, which the policy keeps out.
    expect(made.troubles.splice(0).filter((words) => !words.startsWith("Applying inline style"))).toEqual([]);
    expect(made.strays()).toEqual([]);
  });
}

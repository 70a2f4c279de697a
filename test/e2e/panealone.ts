import { writeFileSync } from "node:fs";
import { join } from "node:path";
import type { Browser } from "playwright-core";
import { launch } from "../../tool/browser";
import { workbookOf } from "../sheet/file/workbooks";
import { ByKeys } from "../taskpane/bykeys";
import { type Bench, bench, type Opened, open, paneOf } from "../taskpane/pane";

/** A workbook file of which only the names of its sheets are read. */
const workbook = workbookOf({ sheets: { "My Shop": "", "Blanks &amp; co": "", Today: "" } });

/** The pane beside a sheet in memory. */
class PaneAlone extends ByKeys {
  private browser!: Browser;
  private made!: Bench;
  private opened!: Opened;

  get page() {
    return this.opened.page;
  }

  get troubles(): string[] {
    return this.opened.troubles;
  }

  get size(): number {
    return this.made.size;
  }

  async begin(): Promise<void> {
    [this.browser, this.made] = await Promise.all([launch(), bench()]);
    writeFileSync(join(this.made.folder, "workbook/porewise-live-us.xlsx"), workbook);
  }

  async end(): Promise<void> {
    await this.browser?.close();
    await this.made?.close();
  }

  async open(): Promise<void> {
    this.opened = await open(this.browser, this.made);
    this.frame = this.opened.pane;
    await this.frame.locator("#panel-safety .item").first().waitFor();
    await this.page.evaluate(() => document.querySelector("iframe")!.focus());
  }

  async close(): Promise<void> {
    await this.page.context().close();
    expect([...this.opened.strays, ...this.troubles]).toEqual([]);
  }

  async find(): Promise<void> {
    this.frame = await paneOf(this.page);
  }

  /** The documents that the workbook holds. */
  parts(): Promise<string[]> {
    return this.page.evaluate(() => [...sheet.parts.values()]);
  }

  async part(): Promise<string> {
    return (await this.parts()).at(-1) ?? "";
  }

  async kept(words: string): Promise<void> {
    await this.page.waitForFunction((text) => [...sheet.parts.values()].some((xml) => xml.includes(text)), words);
  }
}

/** A pane for the tests around, opened anew for each of them; none may leave trouble behind. */
export function eachPane(): PaneAlone {
  const own = new PaneAlone();
  beforeAll(() => own.begin());
  afterAll(() => own.end());
  beforeEach(() => own.open());
  afterEach(() => own.close());
  return own;
}

import { readFileSync } from "node:fs";
import { strFromU8, unzipSync } from "fflate";
import type { BrowserContext } from "playwright-core";
import { ByKeys } from "../taskpane/bykeys";
import { eachAs, type Sheet, type Site } from "./driver";

/** The pane beside the embedded sheet. */
class PaneBeside extends ByKeys {
  made!: Site;
  sheet!: Sheet;

  /** Visits the page. */
  async begin(made: Site, context: BrowserContext): Promise<void> {
    this.made = made;
    this.sheet = await made.visit(context);
  }

  get page() {
    return this.sheet.page;
  }

  async find(): Promise<void> {
    await this.page.locator("#pane iframe").contentFrame().locator("pore-app .tabs").waitFor();
    this.frame = this.page.frames().find((frame) => frame.url().endsWith("pane.html"))!;
  }

  /** From wherever the focus is to the button of the pane, and into it. */
  async open(): Promise<void> {
    const inHead = () => this.page.evaluate(() => document.activeElement?.closest("#head") !== null);
    const onButton = () => this.page.evaluate(() => document.activeElement?.id === "functions");
    for (let i = 0; i < 8 && !(await inHead()); i++) await this.press("F6");
    for (let i = 0; i < 12 && !(await onButton()); i++) await this.press("Tab");
    await this.press("Enter");
    await this.find();
    await this.page.waitForFunction(() => document.activeElement?.tagName === "IFRAME");
    // Code of a view comes when it is looked at: keys that come sooner walk past it and out of the pane.
    await this.frame.locator("[id^=panel-] > *").first().waitFor({ state: "attached" });
    await this.frame.locator('[role="tab"][aria-selected="true"], fluent-tab[aria-selected="true"]').first().waitFor();
  }

  async downloaded(button: string): Promise<Uint8Array> {
    await this.to(button);
    return this.cameDown(() => this.press("Enter"));
  }

  /** The documents in the workbook's file. */
  async documents(): Promise<string[]> {
    const parts = unzipSync(await this.cameDown(() => this.page.locator("#save").press("Enter")));
    const own = Object.entries(parts).filter(([name]) => /^customXml\/item\d+\.xml$/.test(name));
    return own.map(([, bytes]) => strFromU8(bytes));
  }

  private async cameDown(press: () => Promise<void>): Promise<Uint8Array> {
    const download = this.page.waitForEvent("download");
    await press();
    return readFileSync(await (await download).path());
  }
}

/** The page with its pane for the tests around, visited anew by a stranger for each of them. */
export function eachBeside(): PaneBeside {
  const beside = new PaneBeside();
  eachAs("stranger", (made, context) => beside.begin(made, context));
  return beside;
}

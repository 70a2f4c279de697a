import type { Frame, Locator, Page } from "playwright-core";
import { tabTo } from "./pane";

const views = ["Safety", "Workbook", "Functions", "Working"];

/** A pane as somebody uses it who has keys alone. */
export abstract class ByKeys {
  abstract readonly page: Page;
  /** Found anew where the page was loaded anew. */
  frame!: Frame;

  abstract find(): Promise<void>;

  async press(...keys: string[]): Promise<void> {
    for (const key of keys) await this.page.keyboard.press(key);
  }

  type(words: string): Promise<void> {
    return this.page.keyboard.type(words);
  }

  to(wanted: string): Promise<void> {
    return tabTo(this.page, this.frame, wanted);
  }

  async view(name: string): Promise<void> {
    await this.to("Safety");
    await this.press(...Array<string>(views.indexOf(name)).fill("ArrowRight"));
    await this.frame.locator(`#panel-${name.toLowerCase()} > *`).waitFor();
  }

  said(): Locator {
    return this.frame.locator(".said");
  }

  focused(): Promise<string> {
    return this.frame.evaluate(() => document.activeElement?.id ?? "");
  }
}

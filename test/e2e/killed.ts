import { type ChildProcess, spawn } from "node:child_process";
import { once } from "node:events";
import { type Browser, chromium, type Page } from "playwright-core";
import { browserArgs, findBrowser } from "../../tool/browser";

/** A browser with a profile of its own on disk, that can be killed as a power cut kills it, and started again. */
export class Mortal {
  private child: ChildProcess | undefined;
  private browser: Browser | undefined;

  constructor(private readonly profile: string) {}

  async page(): Promise<Page> {
    const args = [...browserArgs, "--remote-debugging-port=0", `--user-data-dir=${this.profile}`, "about:blank"];
    const child = spawn(findBrowser()!, args, { stdio: ["ignore", "ignore", "pipe"], detached: true });
    this.child = child;
    let said = "";
    const address = await new Promise<string>((resolve, reject) => {
      child.once("exit", () => reject(new Error(`the browser ended: ${said}`)));
      child.stderr!.on("data", (words) => {
        said += words;
        const found = /DevTools listening on (\S+)/.exec(said);
        if (found) resolve(found[1]);
      });
    });
    this.browser = await chromium.connectOverCDP(address);
    const page = await this.browser.contexts()[0].newPage();
    await page.setViewportSize({ width: 390, height: 844 });
    return page;
  }

  /** All its processes at once, without a word to them. */
  async kill(): Promise<void> {
    const { child } = this;
    if (!child || child.exitCode !== null || child.signalCode) return;
    const gone = once(child, "exit");
    process.kill(-child.pid!, "SIGKILL");
    await gone;
    await this.browser?.close().catch(() => undefined);
  }
}

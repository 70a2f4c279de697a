import { type Browser, chromium } from "playwright-core";
import { findProgram } from "./programs";

/** The path of an installed Chrome, Chromium or Edge; PORE_BROWSER names another one. */
export const findBrowser = (): string | undefined => findProgram("browser");

/** A quiet browser that asks nobody for anything; without a sandbox, since a build machine's root has none. */
export const browserArgs = [
  "--headless",
  "--no-sandbox",
  "--disable-gpu",
  "--disable-quic",
  "--no-first-run",
  "--disable-background-networking",
  "--disable-component-update",
  "--disable-sync",
  // A page that lives for seconds is not worth compiling twice, on cores that other pages wait for.
  "--js-flags=--no-turbofan --no-maglev",
  // The pages of its own address bar, which it would load beside every page that is tried.
  "--disable-features=WebUIOmniboxPopup,WebUIOmniboxAimPopup,WebUIOmniboxFullPopup,Translate,PaintHolding",
];

export async function launch(): Promise<Browser> {
  const executablePath = findBrowser();
  if (!executablePath) throw new Error("No browser was found: install Chrome, Chromium or Edge, or name one in PORE_BROWSER.");
  return chromium.launch({ executablePath, args: browserArgs });
}

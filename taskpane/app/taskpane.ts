import "@fluentui/web-components/button.js";
import "@fluentui/web-components/checkbox.js";
import "@fluentui/web-components/progress-bar.js";
import "@fluentui/web-components/tab.js";
import "@fluentui/web-components/tablist.js";
import * as z from "zod/mini";
import type { SheetHost } from "../../shared/host";
import "./app";
import { noSheet } from "../nosheet";
import { followBrowser } from "../theme";
import { vendorSheet } from "./excel";

// The Content-Security-Policy forbids compiling code, and trying to would be reported.
z.config({ jitless: true });

declare global {
  /** A page that frames this pane hands over its sheet here, once the frame has loaded. */
  function showPane(host: SheetHost): void;
}

followBrowser();

globalThis.showPane = (host) => {
  const app = Object.assign(document.createElement("pore-app"), { host });
  document.body.replaceChildren(app);
  app.updateComplete.then(() => performance.mark("pane shown"));
};

/** Without Office.js there is no access to the sheet; the functions can be tried all the same. */
async function withoutVendor(): Promise<void> {
  globalThis.showPane(noSheet);
  const app = document.querySelector("pore-app")!;
  await app.updateComplete;
  const words =
    "The sheet cannot be reached: the file office.js could not be loaded. Check the connection, then open this pane again. You can try the functions meanwhile.";
  app.querySelector("main")!.dispatchEvent(new CustomEvent("notice", { detail: { words, failed: true } }));
}

const isVendorMissing = () => !("Office" in globalThis) && document.querySelector('script[src*="office.js"]') !== null;

if (isVendorMissing()) void withoutVendor();
else vendorSheet().then((host) => host && globalThis.showPane(host));

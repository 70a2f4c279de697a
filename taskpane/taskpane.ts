import "@fluentui/web-components/button.js";
import "@fluentui/web-components/checkbox.js";
import "@fluentui/web-components/progress-bar.js";
import "@fluentui/web-components/tab.js";
import "@fluentui/web-components/tablist.js";
import * as z from "zod/mini";
import type { SheetHost } from "../shared/host";
import "./app";
import { vendorSheet } from "./excel";
import { followBrowser } from "./theme";

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

vendorSheet().then((host) => host && globalThis.showPane(host));

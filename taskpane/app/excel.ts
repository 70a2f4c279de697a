import type { SheetHost } from "../../shared/host";
import { excelHost } from "../../src/excel/host";
import { LastCalls } from "../../src/excel/lastcall";
import { noSheet } from "../nosheet";
import { pause } from "../pause";
import { isDark, setTheme } from "../theme";

/** Excel's colors, as far as it tells them: it has four themes, and two of them are dark. */
function followExcel(): void {
  const follow = () => {
    const color = Office.context.officeTheme?.bodyBackgroundColor;
    if (color) setTheme(isDark(color));
  };
  addEventListener("focus", follow);
  follow();
}

/** The sheet beside a pane that loads the vendor's library; undefined where a page is going to hand over its own. */
export async function vendorSheet(): Promise<SheetHost | undefined> {
  if (!("Office" in globalThis)) return undefined;
  const { host, platform } = await Office.onReady();
  // Help in Excel leads here too, in a browser beside it.
  if (host !== Office.HostType.Excel) return noSheet;
  followExcel();
  const calls = globalThis.porewise?.calls ?? new LastCalls();
  return excelHost({
    platform: platform === Office.PlatformType.OfficeOnline ? "web" : "desktop",
    savesFiles: platform !== Office.PlatformType.Mac && platform !== Office.PlatformType.iOS,
    calls,
    pause,
    functionsVersion: globalThis.porewise?.version,
  });
}

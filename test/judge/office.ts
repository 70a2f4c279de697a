import { readFile } from "node:fs/promises";
import { dirname, extname, join } from "node:path";
import { build } from "esbuild";
import type { Browser, Page, Route } from "playwright-core";
import type { Cells } from "../../shared/columns";
import { type ErrorCode, isFault, type Outcome } from "../../shared/outcome";
import type { Metadata } from "../../tool/metadata";

/** The vendor's library judges how our functions hand things in and out. What Excel itself would do with them it cannot say. */

const vendor = "https://appsforoffice.microsoft.com/lib/1/hosted/";
const library = join(dirname(require.resolve("@microsoft/office-js/package.json")), "dist");
export const home = "https://localhost:3000";

/** Excel opens a pane with these words; only this host's are answered without an Excel around. */
const asExcel = "?_host_Info=Excel$Win32$16.01$en-US";

/** Excel says when it is ready; here we do. */
const ready =
  "globalThis.excelIsReady = new Promise((ready) => { globalThis.sayReady = ready; }); Office.onReady = (then) => globalThis.excelIsReady.then(then);";

const plainPage = `<!doctype html><meta charset="utf-8"><script src="${vendor}office.js"></script><script src="ready.js"></script><script src="functions.js"></script><script src="bridge.js"></script>`;

const types: Record<string, string> = {
  ".js": "text/javascript",
  ".html": "text/html",
  ".css": "text/css",
  ".svg": "image/svg+xml",
  ".png": "image/png",
};

/** An Excel with a workbook of ours at the other end of the library's bridge, as a script for a page. */
export async function excelBook(): Promise<string> {
  const entry = join(__dirname, "excel/excel.js");
  const { outputFiles } = await build({ entryPoints: [entry], bundle: true, format: "iife", write: false });
  return outputFiles[0].text;
}

/** Opens a page of ours; what it asks of the vendor comes from the installed package, and nothing leaves. */
export async function openPage(
  browser: Browser,
  files: Readonly<Record<string, string | Uint8Array>>,
  path: string,
  trouble?: (words: string) => void,
): Promise<Page> {
  const context = await browser.newContext();
  const own: Record<string, string | Uint8Array> = {
    "judge.html": plainPage,
    "ready.js": ready,
    "bridge.js": await readFile(join(__dirname, "bridge.js"), "utf8"),
    ...files,
  };
  const answer = async (route: Route) => {
    const { href, origin, pathname } = new URL(route.request().url());
    const contentType = types[extname(pathname)] ?? "application/octet-stream";
    const body =
      origin === home
        ? own[pathname.slice(1)]
        : href.startsWith(vendor)
          ? await readFile(join(library, href.slice(vendor.length).split("?")[0])).catch(() => undefined)
          : undefined;
    return body === undefined ? route.abort() : route.fulfill({ body: typeof body === "string" ? body : Buffer.from(body), contentType });
  };
  await context.route("**/*", answer);
  const page = await context.newPage();
  if (trouble) {
    page.on("pageerror", (error) => trouble(error.message));
    page.on("console", (message) => message.type() === "error" && trouble(message.text()));
  }
  const [file, hash] = path.split("#");
  await page.goto(`${home}/${file}${asExcel}${hash ? `#${hash}` : ""}`);
  return page;
}

/** A call as a cell makes it: a function's id and its arguments' cells, undefined where one is left out. */
export interface Asked {
  readonly id: string;
  readonly cells: readonly (Cells | undefined)[];
}

/** Errors in cells come to a function only if functions.json lets them: else Excel answers for it. */
const mayTakeErrors = 4;

const packed = (cell: unknown) => (isFault(cell) ? { type: "CustomFunctionError", code: cell.error } : (cell ?? null));

/** Packs a call by what functions.json says of the function, so that wrong metadata shows. */
function packedCall({ id, cells }: Asked, { functions, allowErrorForDataTypeAny }: Metadata): unknown[] {
  const made = functions.find((known) => known.id === id);
  if (!made) throw new Error(`functions.json has no ${id}`);
  if (cells.length > made.parameters.length) throw new Error(`${id} takes ${made.parameters.length} arguments`);
  const values = made.parameters.map(({ name, dimensionality, optional }, i) => {
    const own = cells[i];
    if (!own && !optional) throw new Error(`${id}: ${name} may not be left out`);
    return own ? (dimensionality === "matrix" ? own.map((line) => line.map(packed)) : packed(own[0][0])) : null;
  });
  return [id, values, made.options?.requiresAddress ? "Sheet1!A1" : null, allowErrorForDataTypeAny ? mayTakeErrors : 0];
}

/** What the library hands to Excel for a call. */
interface Answered {
  readonly worked: boolean;
  readonly value: unknown;
  readonly code?: number;
}

/** The library's numbers for the errors of a call that threw. */
const codes: Readonly<Record<number, ErrorCode>> = { 1: "#N/A", 5: "#DIV/0!", 6: "#NUM!", 7: "#VALUE!", 8: "#NULL!" };

function shownCell(value: any): Outcome {
  if (typeof value !== "object" || value === null) return value;
  return { error: value.basicValue, message: value.message ?? "" };
}

function shown({ worked, value, code }: Answered): Outcome[][] {
  if (worked) return (value as unknown[][]).map((line) => line.map(shownCell));
  const error = codes[code ?? 0];
  if (!error) throw new Error(`the call failed with code ${code}: ${JSON.stringify(value)}`);
  return [[{ error, message: String(value) }]];
}

/** What a call gave, or why it could not be made or read. */
export type Answer = Outcome[][] | Error;

const tried = <T>(act: () => T): T | Error => {
  try {
    return act();
  } catch (error) {
    return error as Error;
  }
};

/** Opens the functions under the library, ready to be called as Excel does: many calls in one message. */
export async function openFunctions(browser: Browser, script: Uint8Array, metadata: Metadata) {
  const page = await openPage(browser, { "functions.js": script }, "judge.html");
  await page.waitForFunction("globalThis.OfficeExtension?.HostBridge && globalThis.Excel && globalThis.beExcel");
  await page.evaluate("beExcel()");
  return async (calls: readonly Asked[]): Promise<Answer[]> => {
    const ready = calls.map((call) => tried(() => packedCall(call, metadata)));
    const sent = JSON.stringify(ready.filter(Array.isArray));
    const answers = (await page.evaluate(`callAsExcel(${sent})`)) as Answered[];
    return ready.map((call) => (call instanceof Error ? call : tried(() => shown(answers.shift()!))));
  };
}

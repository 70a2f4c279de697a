import { mkdtempSync, readFileSync, rmSync } from "node:fs";
import { readFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { dirname, join } from "node:path";
import type { Browser, ConsoleMessage, Page } from "playwright-core";
import { launch } from "../../tool/browser";
import { elements, parse } from "../../tool/manifest";
import type { Metadata } from "../../tool/metadata";
import { orderOf, pack } from "../../tool/package";
import { type Served, serve } from "../../tool/serve";
import { rehosted } from "../built";
import { needing } from "../needing";

const host = "https://club.example/porewise";
const vendor = "https://appsforoffice.microsoft.com/lib/1/hosted/";
const library = join(dirname(require.resolve("@microsoft/office-js/package.json")), "dist");

needing("browser")("a package on a host of its own, under a sub-path", () => {
  let aside: string;
  let served: Served;
  let browser: Browser;
  let page: Page;
  let asked: string[];
  let troubles: string[];
  let home: string;

  beforeAll(async () => {
    aside = mkdtempSync(join(tmpdir(), "porewise-hosted-"));
    await pack(orderOf(["--host", host, "--name", "Our club", "-o", join(aside, "porewise")]), rehosted);
    served = await serve(aside, { port: 0 });
    home = `${served.address}porewise/`;
    browser = await launch();
  });
  afterAll(async () => {
    await browser?.close();
    await served?.close();
    rmSync(aside, { recursive: true, force: true });
  });

  beforeEach(async () => {
    page = await (await browser.newContext({ viewport: { width: 1280, height: 800 } })).newPage();
    asked = [];
    troubles = [];
    page.on("request", (request) => /^https?:/.test(request.url()) && asked.push(request.url()));
    page.on("response", (response) => response.status() >= 400 && troubles.push(`${response.status()} ${response.url()}`));
    page.on("pageerror", (error) => troubles.push(String(error)));
    // The vendor's library frames its telemetry some seconds after the start; the pane's policy keeps that out, and the browser says so.
    const isTelemetry = (message: ConsoleMessage) =>
      message.location().url.startsWith(vendor) || message.text().includes("https://telemetryservice.");
    page.on(
      "console",
      (message) => message.type() === "error" && !isTelemetry(message) && troubles.push(`${message.text()} ${message.location().url}`),
    );
  });
  afterEach(async () => {
    const met = [...troubles];
    // An icon may still be on its way: without the stand-in it finds no club, which is no trouble of the test's.
    await page.context().unrouteAll({ behavior: "ignoreErrors" });
    await page.context().close();
    expect(met).toEqual([]);
  });

  /** The club's address leads to the loopback server, its path kept; the vendor's to the installed package. */
  async function standIn(): Promise<void> {
    await page.context().route(`${host}/**`, async (route) => {
      const { pathname } = new URL(route.request().url());
      await route.fulfill({ response: await route.fetch({ url: `${served.address}${pathname.slice(1)}` }) });
    });
    await page.context().route(`${vendor}**`, async (route) => {
      const name = new URL(route.request().url()).href.slice(vendor.length).split("?")[0];
      await route.fulfill({ body: await readFile(join(library, name)), contentType: "text/javascript" });
    });
  }

  const manifest = () => parse(readFileSync(join(aside, "porewise/manifest.xml"), "utf8"));

  it("runs page and pane, and asks for nothing outside its path", async () => {
    await page.goto(home);
    await page.waitForSelector("html[data-ready]");
    expect(await page.locator("#mirror").textContent()).toMatch(/Porewise [\d.]+\d\. Self-check compares/);
    await page.locator("#functions").click();
    const pane = page.frameLocator("#pane iframe");
    await pane.locator("#panel-safety .item").first().waitFor();
    await pane.locator("#tick-rated").click();
    expect(await pane.locator(".tally").textContent()).toContain("1 of");
    expect(asked.filter((url) => !url.startsWith(home))).toEqual([]);
    expect(asked).toContain(`${home}pane.html`);
  });

  it("serves every address that the manifest names", async () => {
    const named = elements(manifest(), "*").flatMap((element) => element.getAttribute("DefaultValue") ?? []);
    const addresses = named.filter((value) => value.startsWith("https:"));
    expect(addresses.length).toBeGreaterThan(8);
    for (const address of addresses) {
      expect(address.startsWith(`${host}/`)).toBe(true);
      expect((await fetch(home + address.slice(host.length + 1))).status).toBe(200);
    }
  });

  it("opens the pane at the address in the manifest, with the functions it names beside it", async () => {
    await standIn();
    const at = elements(elements(manifest(), "DefaultSettings")[0], "SourceLocation")[0].getAttribute("DefaultValue")!;
    await page.goto(at);
    await page.locator("#panel-safety .item").first().waitFor();
    expect(asked.filter((url) => !url.startsWith(`${host}/`) && !url.startsWith(vendor))).toEqual([]);
    expect(asked).toContain(`${host}/functions.js`);
  });

  it("shows a function's help, its example live, at the help address in functions.json", async () => {
    await standIn();
    const { functions } = JSON.parse(readFileSync(join(aside, "porewise/functions.json"), "utf8")) as Metadata;
    await page.goto(functions.find(({ id }) => id === "FILL")!.helpUrl!);
    await page.getByRole("heading", { name: "How much resin covers the pieces?" }).waitFor();
    await page.locator("#field-solids").fill("90");
    await page.locator("#answer").getByText("1.38 qt").waitFor();
  });
});

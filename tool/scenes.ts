import type { Page } from "playwright-core";

/** What the README shows of the page. */
export interface Scene {
  readonly name: string;
  /** Leads there from a first visit. */
  readonly arrange: (page: Page) => Promise<void>;
}

/** Turns to a sheet by its tab. */
export async function turn(page: Page, sheet: string): Promise<void> {
  await page.locator(".o-sheet").getByText(sheet, { exact: true }).click();
  await page.locator("#mirror caption").getByText(sheet, { exact: true }).waitFor({ state: "attached" });
}

/** Goes to a cell by the box that names it, as a person may. */
export async function go(page: Page, address: string): Promise<void> {
  const box = page.locator(".o-named-range-selector-container input");
  await box.click();
  await box.fill(address);
  await page.keyboard.press("Enter");
}

/** The first cell under a heading of the sheet that is shown. */
async function under(page: Page, heading: string): Promise<string> {
  const address = await page.locator("#mirror td").getByText(heading, { exact: true }).first().getAttribute("data-cell");
  return address!.replace(/\d+/, (row) => String(Number(row) + 1));
}

async function explain(page: Page, address: string): Promise<void> {
  await go(page, address);
  await page.locator("#functions").click();
  const pane = page.locator("#pane iframe").contentFrame();
  await pane.locator("#tab-working").click();
  await pane.locator("#working .call").first().waitFor();
}

export const scenes: readonly Scene[] = [
  {
    name: "page",
    async arrange(page) {
      await turn(page, "Blanks");
      await explain(page, await under(page, "resin, each"));
    },
  },
  {
    name: "loads",
    async arrange(page) {
      await turn(page, "Loads");
      await explain(page, await under(page, "load"));
    },
  },
];

const rows = 26;

/** The words that a scene shows: those of the cells at the top of the sheet, and of the pane. */
export async function wordsOf(page: Page): Promise<string> {
  const cells = await page.evaluate(
    (most) =>
      [...document.querySelectorAll<HTMLElement>("#mirror td")]
        .filter(({ dataset, textContent }) => textContent && Number(dataset.row) < most)
        .map(({ dataset, textContent }) => `${dataset.cell}: ${textContent}`),
    rows,
  );
  const pane = await page.locator("#pane iframe").contentFrame().locator("#working").textContent();
  return `${[...cells, "", pane?.replace(/\s+/g, " ").trim()].join("\n")}\n`;
}

import type { Sheet } from "./driver";

/** The list of workbooks, as somebody uses it who looks at it. */

export const books = ({ page }: Sheet) => page.locator("#books");
export const names = (sheet: Sheet) => books(sheet).locator("[data-book] strong").allTextContents();
export const row = (sheet: Sheet, name: string) => books(sheet).locator(`[data-book="${name}"]`);
export const press = (sheet: Sheet, name: string, button: string) =>
  row(sheet, name).getByRole("button", { name: button, exact: true }).first().click();
export const said = ({ page }: Sheet) => page.locator("#books .said");

export async function list(sheet: Sheet): Promise<void> {
  await sheet.page.locator("#workbooks").click();
  await books(sheet).locator("h2").waitFor();
}

export const close = (sheet: Sheet) => books(sheet).getByRole("button", { name: "Close", exact: true }).click();

export async function make(sheet: Sheet, words: string): Promise<void> {
  await list(sheet);
  await books(sheet).locator("select").selectOption({ label: words });
  await books(sheet).getByRole("button", { name: "Create" }).click();
  await said(sheet).getByText("It is open").waitFor();
  await close(sheet);
}

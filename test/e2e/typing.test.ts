import { readFileSync } from "node:fs";
import { strFromU8, unzipSync } from "fflate";
import { needing } from "../needing";
import { type Sheet, type Site, site } from "./driver";

/** Where a label stands on the sheet in sight, and so where its value is typed. */
async function beside(sheet: Sheet, label: string): Promise<string> {
  const at = await sheet.page.evaluate(
    (words) => [...document.querySelectorAll<HTMLElement>("#mirror [data-cell]")].find((cell) => cell.textContent === words)?.dataset.cell,
    label,
  );
  if (!at) throw new Error(`no cell says ${label}`);
  return at.replace(/^A/, "B");
}

needing("browser")("typing on the page", () => {
  let made: Site;
  let sheet: Sheet;

  beforeAll(async () => {
    made = await site();
    sheet = await made.visit();
  });
  afterAll(async () => {
    await made?.close();
  });

  describe("My Shop", () => {
    beforeAll(async () => {
      await sheet.turn("My Shop");
      // All but the first settings are folded: the lowest first, for each that opens pushes the others down.
      for (const fold of (await sheet.page.locator(".o-group-fold-button").all()).reverse()) await fold.dispatchEvent("click");
    });

    it.each([
      ["gap", "3/4", "3/4"],
      ["gap", "13/16", "13/16"],
      ["gap", "1 1/8", "1 1/8"],
      ["gap", "3/4 in", "3/4 in"],
      ["gap", "19 mm", "19 mm"],
      ["gap", "0.75", "3/4"],
      ["resin on hand", "1 1/2", "1.5"],
      ["resin on hand", "0.75", "0.75"],
      ["resin on hand", "0", "0"],
      ["scale step", "1/2", "0.5"],
      ["oven", "200", "200"],
      ["fullness", "60 %", "0.6"],
      ["fullness", "0.6", "0.6"],
      ["opens", "5 PM", "5:00 PM"],
      ["opens", "8", "8"],
    ])("%s takes %s", async (label, typed, shown) => {
      const at = await beside(sheet, label);
      await sheet.type(at, typed);
      await sheet.shows(at, shown);
    });
  });

  it("names one wrong value there on every sheet", async () => {
    await sheet.turn("My Shop");
    const oven = await beside(sheet, "oven");
    await sheet.type(oven, "5000");
    await sheet.shows("A2", /^“oven” on My Shop is wrong or missing: type /);
    for (const name of ["Blanks", "Today", "Loads", "Resin Book", "Supplies", "Run Log"]) {
      await sheet.turn(name);
      await sheet.shows("A2", /^“oven” on My Shop is wrong or missing: type /);
    }
    await sheet.turn("My Shop");
    await sheet.type(oven, "200");
    await sheet.shows("A2", /^The facts/);
  });

  it("takes a lone fraction elsewhere for a number, and text in the form of a link for text", async () => {
    await sheet.turn("Woods");
    await sheet.type("K40", "3/4");
    await sheet.shows("K40", "3/4");
    await sheet.type("K40", "2");
    await sheet.shows("K40", "2");
    await sheet.type("K41", "[c](javascript:alert(1))");
    await sheet.shows("K41", "[c](javascript:alert(1))");
  });

  it("takes keys that come while the page is busy for the text of the cell that was chosen, and of no other", async () => {
    const { page } = sheet;
    await sheet.turn("Woods");
    await sheet.type("K42", "before");
    await sheet.go("K42");
    await page.locator("#grid input").first().fill("K43");
    await page.evaluate(() => {
      setTimeout(() => {
        const end = performance.now() + 1500;
        while (performance.now() < end);
      });
    });
    await Promise.all(["Enter", ..."after", "Enter"].map((key) => page.keyboard.press(key)));
    await sheet.shows("K43", "after");
    await sheet.shows("K42", "before");
  });

  it("saves sizes as fractions", async () => {
    await sheet.turn("My Shop");
    const at = await beside(sheet, "gap");
    await sheet.type(at, "13/16");
    await sheet.shows(at, "13/16");
    const saving = sheet.page.waitForEvent("download");
    await sheet.page.locator("#save").click();
    const parts = unzipSync(readFileSync((await (await saving).path())!));
    const shop = strFromU8(parts["xl/worksheets/sheet2.xml"]);
    const look = Number(new RegExp(`<c r="${at}"[^>]* s="(\\d+)"[^>]*><v>0.8125</v>`).exec(shop)?.[1]);
    const styles = strFromU8(parts["xl/styles.xml"]);
    const looks = /<cellXfs.*?<\/cellXfs>/s.exec(styles)![0].match(/<xf .*?(?:\/>|<\/xf>)/gs)!;
    const format = /numFmtId="(\d+)"/.exec(looks[look])![1];
    expect(new RegExp(`<numFmt [^>]*numFmtId="${format}"[^>]*>`).exec(styles)![0]).toContain('formatCode="# ??/??"');
  });
});

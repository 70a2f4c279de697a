import type { BrowserContext, FrameLocator } from "playwright-core";
import { tubCare } from "../../src/labels/labellines";
import { commonSizes, papers } from "../../src/labels/sizes";
import { dist } from "../../tool/fresh";
import { needing } from "../needing";
import { eachAs, type Sheet, type Site } from "./driver";

jest.setTimeout(120_000);

/** The paper as the browser lays it out, in points, and how many pages that is. */
interface Paper {
  readonly pages: number;
  readonly size: string | undefined;
  readonly labels: readonly {
    readonly x: number;
    readonly y: number;
    readonly lines: readonly (readonly [text: string, weight: string, size: number])[];
  }[];
}

needing("browser")("labels on paper", () => {
  let made: Site;
  let context: BrowserContext;
  let sheet: Sheet;
  let pane: FrameLocator;

  eachAs("stranger", async (around, stranger) => {
    [made, context] = [around, stranger];
    sheet = await made.visit(context);
    pane = await workbookView(sheet);
    await pane.locator("#label-tubs").waitFor();
  });

  const workbookView = async ({ page }: Sheet): Promise<FrameLocator> => {
    await page.locator("#functions").click();
    const shown = page.frameLocator("#pane iframe");
    await shown.locator("#tab-workbook").click();
    return shown;
  };

  /** Presses the button, keeps what stands there when the print dialog would open, and prints that to a file. */
  async function printed(): Promise<Paper> {
    const paper = pane.locator("body").evaluate(
      () =>
        new Promise<string>((done) => {
          globalThis.print = () => {
            const sheets = [...document.styleSheets, ...document.adoptedStyleSheets];
            const rules = sheets.flatMap((one) => [...one.cssRules].map(({ cssText }) => cssText));
            done(`<!doctype html><html><head><style>${rules.join("\n")}</style></head>${document.body.outerHTML}</html>`);
          };
        }),
    );
    const [html] = await Promise.all([paper, pane.locator("#print-labels").click()]);
    const page = await context.newPage();
    await page.setContent(html);
    await page.emulateMedia({ media: "print" });
    const labels = await page.locator(".label").evaluateAll((all) =>
      all.map((one) => {
        const { x, y } = one.getBoundingClientRect();
        const point = 72 / 96;
        const lines = [...one.querySelectorAll("p")].map((line) => {
          const { fontWeight, fontSize, visibility } = getComputedStyle(line);
          if (visibility !== "visible") throw new Error(`“${line.textContent}” is not seen on paper`);
          return [line.textContent ?? "", fontWeight, Number.parseFloat(fontSize) * point] as [string, string, number];
        });
        return { x: x * point, y: y * point, lines };
      }),
    );
    const pdf = (await page.pdf({ preferCSSPageSize: true })).toString("latin1");
    await page.close();
    return { pages: (pdf.match(/\/Type\s*\/Page\b(?!s)/g) ?? []).length, size: /\/MediaBox\s*\[([^\]]*)\]/.exec(pdf)?.[1], labels };
  }

  /** On the sheets of a system, so many points to its unit of length. */
  function liesOnGrid({ pages, size, labels }: Paper, system: "US" | "SI", points: number): void {
    const { across, down, width, height, gapAcross, gapDown, top, left } = commonSizes[system];
    expect(pages).toBe(Math.ceil(labels.length / (across * down)));
    const [, , wide, high] = size!.trim().split(/\s+/).map(Number);
    expect(wide).toBeCloseTo(papers[system].width * points, 0);
    expect(high).toBeCloseTo(papers[system].height * points, 0);
    for (const [i, { x, y }] of labels.slice(0, across * down).entries()) {
      expect(x).toBeCloseTo((left + (i % across) * (width + gapAcross)) * points, 0);
      expect(y).toBeCloseTo((top + Math.floor(i / across) * (height + gapDown)) * points, 0);
    }
  }

  it("are as many as tubs and planned pieces, lie on the grid of a Letter sheet, and only their names are bold", async () => {
    await pane.locator("#label-tubs").fill("2");
    const paper = await printed();
    const { labels } = paper;
    expect(labels).toHaveLength(2 + 97);
    liesOnGrid(paper, "US", 72);
    expect(labels[0].lines.map(([text]) => text)).toEqual([
      "Mixed resin, blue",
      expect.stringMatching(/^mixed 1\/13\/2026, use by 4\/13\/2026$/),
      "dye 0.25 tsp per qt",
      tubCare,
    ]);
    expect(labels[2].lines.map(([text]) => text)).toEqual([
      "spalted boxelder, 1 of 14",
      "boxelder",
      expect.stringMatching(/^oven-dry [\d.]+ g$/),
      expect.stringMatching(/^blue, \d+\/\d+\/\d{4}$/),
    ]);
    for (const { lines } of labels)
      for (const [i, [, weight, size]] of lines.entries()) {
        expect([i, weight]).toEqual([i, i === 0 ? "700" : "400"]);
        expect(size).toBeGreaterThanOrEqual(9 - 1e-6);
      }
  });

  it("lie on the grid of an A4 sheet in the SI edition, with days as they are written there", async () => {
    await sheet.give(`${dist}/workbook/porewise-live-si.xlsx`);
    await pane.locator("summary").filter({ hasText: "Label sizes, on A4" }).waitFor();
    const paper = await printed();
    expect(paper.labels).toHaveLength(1 + 97);
    liesOnGrid(paper, "SI", 72 / 25.4);
    expect(paper.labels[0].lines.map(([text]) => text)).toContain("mixed 2026-01-13, use by 2026-04-13");
  });

  it("keep their sizes in the workbook, in another browser too, and say which size does not go together", async () => {
    await pane.locator("summary").filter({ hasText: "Label sizes" }).click();
    await pane.locator("#label-across").fill("4");
    await pane.locator("#print-labels").click();
    await pane.locator("#label-width-slip").filter({ hasText: "Letter is 8.5 in wide" }).waitFor();
    await pane.locator("#label-across").fill("2");
    await pane.locator("#label-down").fill("5");
    await pane.locator("#label-height").fill("2");
    await pane.locator("#label-width").fill("4");
    const { pages, labels } = await printed();
    expect(pages).toBe(Math.ceil(labels.length / 10));
    const [download] = await Promise.all([sheet.page.waitForEvent("download"), sheet.page.locator("#save").click()]);
    const path = `${made.folder}/labels.xlsx`;
    await download.saveAs(path);
    const other = await made.stranger();
    const far = await made.visit(other);
    await far.give(path);
    const there = await workbookView(far);
    await there.locator("summary").filter({ hasText: "Label sizes" }).click();
    await expectValue(there, "#label-across", "2");
    await expectValue(there, "#label-height", "2");
    await other.close();
  });

  const expectValue = async (frame: FrameLocator, field: string, due: string) => {
    await frame.locator(field).waitFor();
    await frame.locator(`${field}`).evaluate(
      (one, value) =>
        new Promise<void>((done) => {
          const look = () => ((one as HTMLInputElement).value === value ? done() : requestAnimationFrame(look));
          look();
        }),
      due,
    );
  };
});

import { read } from "@e965/xlsx";
import { needing } from "../needing";
import { eachBeside } from "./panebeside";

/** A cell that holds nothing, in a blank workbook and on the first sheet of the invented shop. */
const free = "K3";

const tabs = ({ page }: Pick<ReturnType<typeof eachBeside>, "page">) => page.locator(".o-sheet").allTextContents();

needing("browser")("the pane beside the embedded sheet, by keyboard alone", () => {
  const beside = eachBeside();

  it("inserts sheets of the template, each under a name that is free, and the old state stays a version", async () => {
    await beside.open();
    await beside.view("Workbook");
    await beside.frame.locator("#insert").waitFor();
    const before = await tabs(beside);
    for (let i = 0; i < before.length; i++)
      if (before[i] !== "Handout") {
        await beside.to(`#sheet-${i}`);
        await beside.press("Space");
      }
    await beside.to("Insert into this workbook");
    await beside.press("Enter");
    await beside.said().getByText("Inserted at the end").waitFor();
    expect(await beside.said().textContent()).toContain("the button with the workbook's name at the top, then Earlier versions");
    const after = await tabs(beside);
    expect(after.slice(0, before.length)).toEqual(before);
    expect(after.slice(before.length)).toContain("Handout 2");
    expect(await beside.focused()).toBe("insert");
    await beside.sheet.kept();
    expect(await beside.page.locator("#mirror").textContent()).toMatch(/Porewise [\d.]+\d\. Self-check compares/);
    await beside.page.locator("#workbooks").press("Enter");
    await beside.page.locator("#books .versions summary").waitFor();
  });

  it("opens the template as a workbook of its own, and downloads it", async () => {
    await beside.open();
    await beside.view("Workbook");
    await beside.to("#units-0");
    await beside.press("ArrowDown");
    await beside.frame.locator("#open").waitFor();
    const file = await beside.downloaded("Download");
    expect(read(file).SheetNames).toContain("Handout");
    await beside.press("Shift+Tab");
    expect(await beside.focused()).toBe("open");
    await beside.press("Enter");
    await beside.page.locator("#workbooks").getByText("porewise-live-si").waitFor();
    await beside.said().getByText("is open").waitFor();
  });

  it("makes a copy with values for people without the functions", async () => {
    await beside.open();
    await beside.view("Workbook");
    const copy = read(await beside.downloaded("Make the copy"), { cellFormula: true });
    const formulas = copy.SheetNames.flatMap((name) => Object.values(copy.Sheets[name]).map((cell: any) => cell?.f ?? ""));
    expect(formulas.filter((formula) => /PORE[._]/i.test(formula))).toEqual([]);
    expect(formulas.filter(Boolean).length).toBeGreaterThan(100);
    await beside
      .said()
      .getByText(/\d+ PORE cells are their values/)
      .waitFor();
  });

  it("puts a formula into the cell, and never over a filled one without asking", async () => {
    await beside.sheet.go(free);
    await beside.open();
    await beside.view("Functions");
    await beside.to("How much resin covers the pieces?");
    await beside.press("Enter");
    for (const [field, text] of Object.entries({ chamber: "6", stack: "5", solids: "104" })) {
      await beside.to(`#field-${field}`);
      await beside.page.keyboard.type(text);
    }
    await beside.to("Insert formula");
    await beside.press("Enter");
    await beside.sheet.shows(free, "1.14");
    await beside.press("Enter");
    await beside.frame.locator("#put-over").waitFor();
    expect(await beside.focused()).toBe("put-over");
    await beside.press("Enter");
    await beside.frame.locator("#put-over").waitFor({ state: "detached" });
    await beside.sheet.shows(free, "1.14");
  });

  it("explains the cell that the grid selects", async () => {
    await beside.sheet.type(free, "=PORE.BAKE(0.75,0.75,5,0.4)");
    await beside.sheet.go(free);
    await beside.open();
    await beside.view("Working");
    await beside.frame.locator("#working .call").waitFor();
    expect(await beside.frame.locator(".equation.numbers").textContent()).toContain("until the core reaches 190 °F");
    await beside.press("F6", "F6");
    // Words that are put together from another cell are explained by that cell.
    await beside.sheet.type("K4", `="about "&TEXT(${free},"0")&" min"`);
    await beside.sheet.go("K4");
    await beside.frame.getByText(/^Made from/).waitFor();
    expect(await beside.frame.locator(".equation.numbers").textContent()).toContain("until the core reaches 190 °F");
    await beside.sheet.go("A1");
    await beside.frame.getByText("There is no PORE function in this cell.").waitFor();
  });
});

import { needing } from "../needing";
import { eachPane } from "./panealone";

needing("browser")("the forms of the pane, by keyboard alone", () => {
  const own = eachPane();

  const openFill = async () => {
    await own.view("Functions");
    await own.to("How much resin covers the pieces?");
    await own.press("Enter");
    await own.frame.locator("#field-chamber").waitFor();
  };

  it("answers as one types, in kitchen measures too, and puts formula and format into the cell", async () => {
    await openFill();
    for (const [field, text] of Object.entries({ chamber: "6", stack: "5", solids: "104" })) {
      await own.to(`#field-${field}`);
      await own.type(text);
    }
    expect(await own.frame.locator("#answer").textContent()).toMatch(/Resin to pour\s*1\.14 qt\s*4\.5 cups, 1080 mL/);
    await own.to("Insert formula");
    await own.press("Enter");
    await own.page.waitForFunction(() => sheet.cells.size > 0);
    expect(await own.page.evaluate(() => sheet.cells.get("Sheet1!B2"))).toMatchObject({ formula: "=PORE.FILL(6,5,104)", format: "0.00" });
  });

  it("never writes over a filled cell without asking", async () => {
    await own.page.evaluate(() => sheet.cells.set("Sheet1!B2", { formula: "", value: 12 }));
    await openFill();
    await own.frame.locator("#field-chamber").fill("6");
    await own.frame.locator("#field-stack").fill("5");
    await own.frame.locator("#field-solids").fill("104");
    await own.to("#put");
    await own.press("Enter");
    await own.frame.locator("#put-over").waitFor();
    expect(await own.focused()).toBe("put-over");
    expect(await own.page.evaluate(() => sheet.cells.get("Sheet1!B2")!.value)).toBe(12);
    await own.press("Enter");
    await own.page.waitForFunction(() => sheet.cells.get("Sheet1!B2")!.formula !== "");
    expect(await own.focused()).toBe("put");
    expect(await own.said().textContent()).toBe("Formula inserted in Sheet1!B2.");
    await own.press("Enter");
    await own.frame.locator("#put-over").waitFor();
    expect(await own.said().textContent()).toBe("");
  });

  it("judges a typed nought, and puts no formula into a cell that would show nothing", async () => {
    await own.view("Functions");
    await own.frame.locator("#ask-MOISTURE").click();
    for (const field of ["weight", "dryWeight"]) await own.frame.locator(`#field-${field}`).fill("0");
    expect(await own.frame.locator(".field .fault").allTextContents()).toEqual(Array(2).fill(expect.stringContaining("0 oz is outside")));
    await own.page.evaluate(() => {
      sheet.cells.set("Shop!C3", { formula: "", value: 0 });
      sheet.select("Shop!C3");
    });
    for (const field of ["weight", "dryWeight"]) {
      await own.frame.locator(`#use-${field}`).click();
      await own.frame.locator(`[aria-describedby^="label-${field}"]`).waitFor();
    }
    expect(await own.frame.locator("#answer").textContent()).toContain("so the answer is blank too");
    await own.frame.locator("#put").click();
    expect(await own.frame.locator("#put").getAttribute("disabled-focusable")).not.toBeNull();
    expect(await own.frame.locator("#put-over").count()).toBe(0);
  });

  it("shows what is wrong under the field, tied to it", async () => {
    await openFill();
    await own.to("#field-stack");
    await own.type("5 lb");
    const field = own.frame.locator("#field-stack");
    expect(await field.getAttribute("aria-invalid")).toBe("true");
    const words = await own.frame.locator("#trouble-stack").textContent();
    expect(words).toContain("is a weight, not a length");
    expect(await field.getAttribute("aria-describedby")).toContain("trouble-stack");
  });

  it("takes what is selected, and puts it in by its reference", async () => {
    await own.page.evaluate(() => {
      sheet.cells.set("Shop!C3", { formula: "", value: 6 });
      sheet.select("Shop!C3");
    });
    await openFill();
    await own.to("#use-chamber");
    await own.press("Enter");
    await own.frame.locator(".from").waitFor();
    expect(await own.frame.locator(".from").textContent()).toBe("from Shop!C3, one cell");
    expect(await own.frame.locator(".formula").textContent()).toBe("=PORE.FILL(Shop!C3)");
  });

  it("finds a function by a word, and shows all behind more", async () => {
    await own.view("Functions");
    await own.to("#search");
    await own.type("foam");
    expect((await own.frame.locator(".ask").allTextContents())[0]).toContain("Is there room for the foam?");
    await own.press("Control+A", "Delete");
    expect(await own.frame.locator(".ask").count()).toBe(8);
    await own.to("#more");
    await own.press("Enter");
    expect(await own.frame.locator(".ask").count()).toBeGreaterThan(40);
  });

  it("keeps what was typed over a reload", async () => {
    await openFill();
    await own.to("#field-chamber");
    await own.type("7 1/2");
    await own.page.reload();
    await own.find();
    await own.frame.locator("#field-chamber").waitFor();
    expect(await own.frame.locator("#field-chamber").inputValue()).toBe("7 1/2");
  });

  it("tells of a lid that it is refused or not, and never the share", async () => {
    await own.view("Functions");
    await own.to("#search");
    await own.type("lid");
    await own.to("Is this lid too weak?");
    await own.press("Enter");
    await own.frame.locator("#field-diameter").fill("6");
    await own.frame.locator("#field-thickness").fill("0.75");
    expect(await own.frame.locator("#answer").textContent()).toMatch(/^\s*Verdict\s*not ruled out \(this is no approval\)\s*$/);
    expect(await own.frame.locator(".formula").textContent()).toBe("=PORE.LIDLOAD(6,0.75)");
    await own.frame.locator("#field-diameter").fill("30");
    expect(await own.frame.locator("#answer").textContent()).toMatch(/^\s*Verdict\s*too weak: do not pump\s*$/);
  });
});

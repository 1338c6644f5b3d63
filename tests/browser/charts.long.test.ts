import type { Locator } from "playwright-core";
import { describe, expect, it } from "vitest";
import { OpenedSite } from "./opened";

describe("the charts over the cells", () => {
  const tryout = new OpenedSite().page();
  const chart = (): Locator => tryout.page.locator("#spreadsheet svg[role=img]");
  const words = async (): Promise<string> => (await chart().getAttribute("aria-label")) ?? "";

  it("show the margins of the range, and follow a price", async () => {
    expect(await chart().count()).toBe(0);
    await tryout.openSheet("Margins");
    await expect
      .poll(words)
      .toMatch(/^Bars: Margin of each candle\. .* Now: Quince, medium tin: 51%,.* Bare, medium tin: 51%/);
    await tryout.openSheet("Candles");
    await expect.poll(() => chart().count()).toBe(0);
    // By hand: a price of 8, less 6.5 % and 0.25 in fees and the cost of 3.8236, leaves 3.4064, which is 43 %.
    await tryout.type("E14", "8");
    await tryout.openSheet("Margins");
    await expect.poll(words).toContain("Now: Quince, medium tin: 43%");
  });

  it("stand on their cells also when the sheet is scrolled, and leave clicks to them", async () => {
    const before = await chart().boundingBox();
    await tryout.page.mouse.move(400, 500);
    await tryout.page.mouse.wheel(0, 200);
    await expect.poll(async () => (await chart().boundingBox())?.y).toBeCloseTo((before?.y ?? 0) - 200, 0);
    // Clicks go through to the cells below.
    await tryout.page.mouse.click(400, 500);
    await expect.poll(() => tryout.nameBox.inputValue()).toMatch(/^C2\d$/);
  });

  it("show weight against hours for each test, and follow a reading", async () => {
    await tryout.openWorkbook("Demo burn tests");
    await tryout.openSheet("Tests");
    await expect.poll(words).toContain("A: Straight tumbler, cotton, size 6: 0: 528, 4: 507,");
    await tryout.openSheet("Readings");
    await tryout.type("D10", "500");
    await tryout.openSheet("Tests");
    await expect.poll(words).toContain("size 6: 0: 528, 4: 500, 8: 485");
  });

  it("take the colours of a light page, and of a dark one when it becomes that", async () => {
    const paper = () => chart().locator("rect").first().getAttribute("fill");
    await expect.poll(paper).toBe("#FFFFFF");
    await tryout.page.emulateMedia({ colorScheme: "dark" });
    await expect.poll(paper).toBe("#26221D");
  });

  it("go with their workbook and come with the next one", async () => {
    await tryout.openWorkbook("Demo studio");
    await expect.poll(() => chart().count()).toBe(0);
    await tryout.comeBackTo("Demo studio");
    await tryout.openSheet("Margins");
    await expect.poll(words).toContain("Now: Quince, medium tin: 43%");
  });
});

describe("the charts over cells that move", () => {
  const tryout = new OpenedSite().page();
  const chart = (): Locator => tryout.page.locator("#spreadsheet svg[role=img]");
  const words = async (): Promise<string> => (await chart().getAttribute("aria-label")) ?? "";

  it("keep to their rows when one is inserted", async () => {
    await tryout.openWorkbook("Demo burn tests");
    // A row in the middle of test A: B must not lose its first reading to it.
    await tryout.openSheet("Readings");
    await tryout.goTo("A1");
    await tryout.openRowMenu(10);
    // Its middle is the number of rows.
    await tryout.page.getByText("rows above").click({ position: { x: 20, y: 10 } });
    await expect.poll(async () => (await tryout.cells("Readings", 14, 0, 2, 1)).flat()).toEqual(["A", "B"]);
    await tryout.openSheet("Tests");
    await expect.poll(words).toContain("16: 440, 20: 418. B: Straight tumbler, cotton, size 10: 0: 531, 4: 498");
    await tryout.openSheet("Readings");
    await tryout.goTo("A7");
    await tryout.page.keyboard.press("Control+z");
    await expect.poll(async () => (await tryout.cells("Readings", 13, 0, 2, 1)).flat()).toEqual(["A", "B"]);
    await tryout.openSheet("Tests");
    await expect.poll(words).toContain("16: 440, 20: 418. B: Straight tumbler, cotton, size 10: 0: 531, 4: 498");
  });

  it("draw a sixth test and name it by its cells, also after a row has come above these", async () => {
    await tryout.paste("A14", [["F", "Small tin"]]);
    await tryout.type("F14", "Cotton, size 2");
    await tryout.openSheet("Readings");
    expect(await tryout.cells("Readings", 45, 0, 2)).toEqual([["E"], [null]]);
    await tryout.paste("A47", [
      ["F", 1, 0, 150],
      ["F", 1, 240, 138],
    ]);
    await tryout.openSheet("Tests");
    await expect.poll(words).toMatch(/F: Small tin, cotton, size 2: 0: 150, 4: 138\.$/);

    await tryout.openSheet("Readings");
    await tryout.goTo("A2");
    const canvas = await tryout.page.locator("canvas[id^=univer-sheet-main-canvas]").boundingBox();
    await tryout.page.mouse.click((canvas?.x ?? 0) + 20, (canvas?.y ?? 0) + 62, { button: "right" });
    await tryout.page.getByText("rows above").click({ position: { x: 20, y: 10 } });
    await expect.poll(() => tryout.cells("Readings", 6, 0)).toEqual([["Test"]]);
    await tryout.openSheet("Tests");
    await expect.poll(words).toMatch(/F: Small tin, cotton, size 2: 0: 150, 4: 138\.$/);
  });
});

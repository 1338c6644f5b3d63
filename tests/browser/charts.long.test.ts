import type { Locator } from "playwright-core";
import { describe, expect, it } from "vitest";
import { OpenedSite } from "./opened";

describe("the charts over the cells", () => {
  const tryout = new OpenedSite().page();
  const chart = (): Locator => tryout.page.locator("#spreadsheet svg[role=img]");
  const words = async (): Promise<string> => (await chart().getAttribute("aria-label")) ?? "";
  const tumblers = async (): Promise<string> => (await chart().first().getAttribute("aria-label")) ?? "";

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

  it("show the rates of each vessel's wicks, and follow a reading", async () => {
    await tryout.openWorkbook("Demo burn tests");
    await tryout.openSheet("Wicks");
    await expect.poll(() => tumblers()).toContain("Mean: W-18: 4.5, W-21: 5.5, W-24: 6.5, W-27: 7.8");
    await tryout.openSheet("Readings");
    // The first weight of T-04, with W-21: 10 g more.
    await tryout.type("D67", "454.3");
    await tryout.openSheet("Wicks");
    await expect.poll(() => tumblers()).not.toContain("W-21: 5.5");
  });

  it("take the colours of a light page, and of a dark one when it becomes that", async () => {
    const paper = () => chart().first().locator("rect").first().getAttribute("fill");
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
  const tumblers = async (): Promise<string> =>
    (await tryout.page.locator("#spreadsheet svg[role=img]").first().getAttribute("aria-label")) ?? "";

  it("keep to their rows when some are inserted above them", async () => {
    await tryout.openWorkbook("Demo burn tests");
    await tryout.openSheet("Wicks");
    await expect.poll(tumblers).toContain("Mean: W-18: 4.5, W-21: 5.5, W-24: 6.5, W-27: 7.8");
    await tryout.goTo("A1");
    await tryout.openRowMenu(3);
    // Its middle is the number of rows.
    await tryout.page.getByText("rows above").click({ position: { x: 20, y: 10 } });
    await expect.poll(async () => (await tryout.cells("Wicks", 4, 0)).flat()).toEqual(["Vessel"]);
    await expect.poll(tumblers).toContain("Mean: W-18: 4.5, W-21: 5.5, W-24: 6.5, W-27: 7.8");
  });

  it("draw another wick, also after a row has come above them", async () => {
    await tryout.openSheet("Burn tests");
    // T-01, whose rate is 6.3.
    await tryout.type("D5", "W-30");
    await tryout.type("E5", "3");
    await tryout.openSheet("Wicks");
    await tryout.type("A11", "W-30");
    await expect.poll(tumblers).toMatch(/Mean: .*W-27: 7\.8, W-30: 6\.3/);
  });
});

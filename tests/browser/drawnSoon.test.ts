import { describe, expect, it } from "vitest";
import { OpenedSite } from "./opened";

/** Notes how long everything is put off until the sheet is drawn. */
const NOTE_WAITS = `
  const { setTimeout } = window;
  window.waits = [];
  window.setTimeout = (run, wait = 0, ...given) => {
    if (!("pourwright" in window)) window.waits.push(wait);
    return setTimeout(run, wait, ...given);
  };`;

describe("the first workbook", () => {
  const site = new OpenedSite();

  // 300: SingleUnitUIController of @univerjs/ui, version 0.25.1.
  it("is drawn without the 300 ms that Univer would wait before it", async () => {
    const page = await site.browser.newPage();
    await page.addInitScript(NOTE_WAITS);
    await page.goto(`${site.origin}/`);
    await page.waitForFunction(() => "pourwright" in window);
    const waits = await page.evaluate(() => (window as unknown as { waits: number[] }).waits);
    expect(waits).toContain(0);
    expect(waits).not.toContain(300);
    await page.close();
  });
});

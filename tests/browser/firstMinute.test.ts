import { describe, expect, it } from "vitest";
import { cases } from "../cases";
import { OpenedSite } from "./opened";
import { PATIENCE } from "./page";

const site = new OpenedSite();

const WAYS = ["Look at the demo", "Start my own", "Open my workbook"];

const SIZES = [
  { width: 320, height: 700 },
  { width: 1280, height: 800, dark: true },
];

describe.each(SIZES.slice(0, cases(1, 2)))("a newcomer at %o", (size) => {
  const tryout = site.page({ ...size, isNew: true });

  it("reads in a line what this is, with the ways on, above the demo", async () => {
    const { page } = tryout;
    const welcome = page.getByRole("region", { name: "Ways to begin" });
    expect(await welcome.locator("p").textContent()).toMatch(/^A spreadsheet for container candles: [^.]+\.$/);
    expect(await welcome.getByRole("button").allTextContents()).toEqual(WAYS);
    const head = await page.locator("#header").boundingBox();
    expect(head?.height).toBeLessThan(size.height / 3);
    expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(size.width);
    const [[fill]] = (await tryout.cells("Vessels", 4, 4)) as [[number]];
    expect(fill).toBeGreaterThan(0);
    expect(await tryout.faults({ exclude: ["#spreadsheet"] })).toEqual([]);
  });

  it("starts her own at the first cell to fill, below a row that says that it is an example", async () => {
    const { page } = tryout;
    await page.getByRole("button", { name: "Start my own" }).click();
    await page.locator("#name", { hasText: "My workbook" }).waitFor();
    expect(await page.getByRole("region", { name: "Ways to begin" }).isVisible()).toBe(false);
    await expect
      .poll(() => page.evaluate(() => window.pourwright.selectedCell()), PATIENCE)
      .toEqual({ sheet: "Vessels", row: 5, column: 0 });
    // 200 x 0.86 = 172, the usual factor.
    expect(await tryout.cells("Vessels", 4, 0, 1, 4)).toEqual([["Example: write over it", 200, null, 172]]);
    await page.keyboard.type("Jar", { delay: 5 });
    await page.keyboard.press("Enter");
    await expect.poll(() => tryout.cells("Vessels", 5, 0), PATIENCE).toEqual([["Jar"]]);
    await page.getByRole("button", { name: "New", exact: true }).click();
    expect(await tryout.faults({ exclude: ["#spreadsheet"] })).toEqual([]);
    expect(await page.evaluate(() => document.activeElement?.textContent)).toBe("Starter tables");
    await page.keyboard.press("Escape");
    await page.locator("#beginnings").waitFor({ state: "hidden" });
  });
});

describe("the demo", () => {
  const tryout = site.page({ isNew: true });

  it("is chosen by whoever begins to work in it", async () => {
    const welcome = tryout.page.getByRole("region", { name: "Ways to begin" });
    await tryout.openSheet("Vessels");
    expect(await welcome.isVisible()).toBe(true);
    await tryout.type("C5", "100");
    await welcome.waitFor({ state: "hidden" });
    expect(await tryout.cells("Vessels", 4, 4)).toEqual([[86]]);
    expect(await tryout.page.locator("#name").textContent()).toBe("Demo studio");
  });
});

describe("by keys alone", () => {
  const tryout = site.page();
  const place = () =>
    tryout.page.evaluate(() =>
      ["spreadsheet", "pane", "header"].find((id) => document.getElementById(id)?.contains(document.activeElement)),
    );

  it("F6 goes round cells, pane and head, and with Shift the other way", async () => {
    const { page } = tryout;
    await tryout.tables();
    await tryout.goTo("A1");
    const places: (string | undefined)[] = [];
    for (const key of ["F6", "F6", "F6", "Shift+F6", "Shift+F6", "Shift+F6"]) {
      await page.keyboard.press(key);
      places.push(await place());
    }
    expect(places).toEqual(["pane", "header", "spreadsheet", "header", "pane", "spreadsheet"]);
    await page.keyboard.press("ArrowDown");
    await expect.poll(() => page.evaluate(() => window.pourwright.selectedCell()?.row), PATIENCE).toBe(1);
  });
});

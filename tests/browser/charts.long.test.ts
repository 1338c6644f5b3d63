import type { Locator } from "playwright-core";
import { describe, expect, it } from "vitest";
import { OpenedSite } from "./opened";

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

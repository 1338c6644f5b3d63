import { describe, expect, it } from "vitest";
import { BEGINNINGS } from "../../src/tryout/beginnings";
import { OpenedSite } from "./opened";
import { PATIENCE } from "./page";

describe("the page", () => {
  const tryout = new OpenedSite().page();

  it("begins from each of what it offers, and from a copy of a sample each time", async () => {
    const { page } = tryout;
    await tryout.openSheet("Vessels");
    await tryout.type("C5", "123");
    const labels = await page.locator("#beginnings button").allTextContents();
    expect(labels).toEqual(BEGINNINGS.map(({ label }) => label));
    for (const label of labels) {
      await tryout.openWorkbook(label);
      await expect.poll(() => tryout.problems(), { ...PATIENCE, message: label }).toEqual([]);
      await tryout.tables();
    }
    await tryout.openWorkbook("Demo studio");
    // The first one was changed, and so is kept under its name.
    expect(await page.locator("#name").textContent()).toBe("Demo studio 2");
    expect(await tryout.cells("Vessels", 4, 2)).not.toEqual([[123]]);
    const [pot] = await tryout.cells("Pots", 16, 0, 1, 2);
    expect(pot?.[0]).toBe(1);
  });
});

import { beforeAll, describe, expect, it } from "vitest";
import { later } from "./later";
import { OpenedSite } from "./opened";

/** Pasting as a user does: numbers are invented. */
describe("pasting", () => {
  const site = new OpenedSite();
  const tryout = site.page();
  const press = async (keys: string) => {
    await tryout.page.keyboard.press(keys);
    await tryout.idle();
  };
  /** The number format and the fill of a cell, row and column from 0. */
  const look = (sheet: string, row: number, column: number) =>
    tryout.page.evaluate(
      ([name, row, column]) => {
        const { sheets, styles } = window.pourwright.snapshot();
        const cell = Object.values(sheets).find((one) => one.name === name)?.cellData?.[row]?.[column];
        const style = typeof cell?.s === "string" ? styles[cell.s] : cell?.s;
        return [style?.n?.pattern, style?.bg?.rgb];
      },
      [sheet, row, column] as const,
    );

  beforeAll(async () => {
    await later(tryout.page, () => window.pourwright.work);
  });

  it("plain numbers into percentages takes them as typed there, says so until undone, and keeps the cells' look", async () => {
    await tryout.openSheet("Scents");
    const before = await look("Scents", 5, 1);
    await tryout.paste("B6", [[6], [7.5]]);
    await expect.poll(() => tryout.cells("Scents", 5, 1, 2, 1)).toEqual([[0.06], [0.075]]);
    await expect
      .poll(() => tryout.message())
      .toMatch(/^B6: 6 was taken as 6 %, and 1 more cell in the same way\. If you mean something else/);
    expect(await look("Scents", 5, 1)).toEqual(before);
    await press("Control+Z");
    await expect.poll(() => tryout.message()).toBe("");
    expect(await tryout.cells("Scents", 5, 1)).toEqual([[0.08]]);
  });

  it("by Paste Value of the cells' menu, all by keys, brings what a formula gave", async () => {
    const cells = [{ number: 3 }, { formula: "=A1*2" }].map((content, column) => ({ row: 0, column, content }));
    await tryout.host("addSheet", { name: "Values", widths: [], cells });
    const focused = () => tryout.page.evaluate(() => document.activeElement?.textContent ?? "");
    await tryout.goTo("B1");
    await press("Control+C");
    await tryout.goTo("C4");
    await press("Shift+F10");
    await expect.poll(focused).toBe("Copy");
    for (let presses = 0; presses < 9 && (await focused()) !== "Paste Special"; presses++) await press("ArrowDown");
    await press("ArrowRight");
    await expect.poll(focused).toBe("Paste Value");
    expect(await tryout.faults(".univer-popup")).toEqual([]);
    await press("ArrowLeft");
    await expect.poll(focused).toBe("Paste Special");
    // At once, while the submenu that was left is still fading.
    await press("Enter");
    await expect.poll(focused).toBe("Paste Value");
    await press("Enter");
    await expect.poll(() => tryout.cells("Values", 3, 2)).toEqual([[6]]);
    await tryout.goTo("C4");
    const formula = await tryout.page.evaluate(() => {
      const sheet = Object.values(window.pourwright.snapshot().sheets).find(({ name }) => name === "Values");
      return sheet?.cellData?.[3]?.[2]?.f ?? null;
    });
    expect(formula).toBeNull();
  });
});

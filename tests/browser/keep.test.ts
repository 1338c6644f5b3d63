/** What a maker does is kept: through a killed browser, a reload, a second tab, and storage that is refused. */

import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { launchProcess } from "./launch";
import { alert, cell, names, openList, reload, settled, Tabs } from "./tabs";

const tabs = new Tabs();

describe("a browser that is killed", () => {
  it("has lost nothing that was done a second before, and works it all out again", async () => {
    const folder = mkdtempSync(join(tmpdir(), "pourwright-"));
    try {
      const first = await launchProcess(folder);
      const before = await tabs.tab(first.context, true);
      await before.openWorkbook("An empty workbook");
      await before.type("A1", "21");
      await before.type("A2", "=A1*2");
      await before.type("B1", '=POUR.FILLWEIGHT(100,"g",0.86)');
      await settled(before);
      const worked = await cell(before, "Sheet1", 0, 1);
      await first.kill();

      const second = await launchProcess(folder);
      const after = await tabs.tab(second.context);
      expect(await cell(after, "Sheet1", 0, 0)).toBe(21);
      // Twice 21, worked out by hand.
      expect(await cell(after, "Sheet1", 1, 0)).toBe(42);
      expect(await cell(after, "Sheet1", 0, 1)).toEqual(worked);
      // Not only its last value: it follows what it is made of.
      await after.type("A1", "5");
      expect(await cell(after, "Sheet1", 1, 0)).toBe(10);
      await second.kill();
    } finally {
      // The last of the killed processes may still be about to end.
      rmSync(folder, { recursive: true, force: true, maxRetries: 100, retryDelay: 100 });
    }
  });
});

describe("a reload", () => {
  it("comes back to the workbook with its styles, its sheets and the pane's settings, at the sheet worked on last", async () => {
    const tryout = await tabs.tab(await tabs.profile(), true);
    await tryout.openSheet("Batch");
    await tryout.type("A20", "a note of mine");
    await settled(tryout);
    await reload(tryout);
    expect(await tryout.page.locator("#name").textContent()).toBe("Demo studio");
    expect(await cell(tryout, "Batch", 19, 0)).toBe("a note of mine");
    expect(await tryout.page.evaluate(() => window.pourwright.selectedCell()?.sheet)).toBe("Batch");
    expect(tryout.complaints).toEqual([]);
  });
});

describe("a second tab", () => {
  it("only shows the workbook, takes it over by a press, and the first one says so", async () => {
    const context = await tabs.profile();
    const one = await tabs.tab(context, true);
    await one.openWorkbook("An empty workbook");
    await one.type("A1", "of the first");
    await settled(one);

    const two = await tabs.tab(context);
    await expect.poll(() => alert(two)).toContain("open in another tab");
    expect(await cell(two, "Sheet1", 0, 0)).toBe("of the first");
    await two.goTo("A2");
    await two.page.keyboard.type("x");
    await two.page.keyboard.press("Enter");
    await two.idle();
    expect(await cell(two, "Sheet1", 1, 0)).toBeNull();
    expect(await alert(two)).toContain("Nothing has changed");

    // What the pane would write is refused in words too.
    await expect(two.host("addSheet", { name: "New", widths: [], cells: [] })).rejects.toThrow("only be looked at");
    await expect(two.host("write", "Sheet1", [{ row: 0, column: 0, content: { number: 1 } }])).rejects.toThrow(
      "only be looked at",
    );

    // An edit that the first one has made since comes along.
    await one.page.bringToFront();
    await one.type("A3", "later");
    await two.page.bringToFront();
    await two.page.getByRole("button", { name: "Work here instead" }).click();
    await expect.poll(() => alert(one)).toContain("open in another tab");
    await expect.poll(() => cell(two, "Sheet1", 2, 0)).toBe("later");
    await two.type("A2", "of the second");
    await settled(two);
    await one.page.bringToFront();
    await one.goTo("A4");
    await one.page.keyboard.type("lost");
    await one.page.keyboard.press("Enter");
    await one.idle();
    expect(await cell(one, "Sheet1", 3, 0)).toBeNull();
    await reload(two);
    expect(await cell(two, "Sheet1", 1, 0)).toBe("of the second");
  });
});

describe("storage that is refused", () => {
  it("is said at once with a way to save a file, and the sheet works", async () => {
    const context = await tabs.profile();
    await context.addInitScript(() => {
      IDBFactory.prototype.open = () => {
        throw new DOMException("no", "SecurityError");
      };
    });
    const tryout = await tabs.tab(context, true);
    await expect
      .poll(() => tryout.page.getByRole("alert").allTextContents())
      .toContainEqual(expect.stringContaining("This browser keeps nothing for this page"));
    expect(await tryout.page.getByRole("button", { name: "Save a file" }).isVisible()).toBe(true);
    await tryout.openWorkbook("An empty workbook");
    await tryout.type("A1", "6");
    await tryout.type("A2", "=A1+1");
    expect(await cell(tryout, "Sheet1", 1, 0)).toBe(7);
    expect(tryout.complaints).toEqual([]);
  });
});

describe("the list of workbooks", () => {
  it("opens, renames, duplicates, removes and puts back by keyboard", async () => {
    const tryout = await tabs.tab(await tabs.profile(), true);
    const { page } = tryout;
    await tryout.openWorkbook("An empty workbook");
    await tryout.type("A1", "mine");
    await settled(tryout);

    const list = await openList(tryout);
    expect(await names(list)).toEqual(["My workbook"]);
    await list.getByRole("button", { name: "Rename: My workbook" }).press("Enter");
    await page.keyboard.type("Winter");
    await page.keyboard.press("Enter");
    await list.getByRole("button", { name: "Winter", exact: true }).waitFor();
    expect(await page.locator("#name").textContent()).toBe("Winter");

    await list.getByRole("button", { name: "Duplicate: Winter" }).press("Enter");
    await list.getByRole("button", { name: "Winter 2", exact: true }).waitFor();
    await list.getByRole("button", { name: "Winter 2", exact: true }).press("Enter");
    await expect.poll(() => page.locator("#name").textContent()).toBe("Winter 2");
    expect(await cell(tryout, "Sheet1", 0, 0)).toBe("mine");
    await tryout.type("A1", "of the copy");
    await settled(tryout);

    await openList(tryout);
    await list.getByRole("button", { name: "Remove: Winter", exact: true }).press("Enter");
    await page.keyboard.press("Enter");
    await list.getByText("Winter is removed.").first().waitFor();
    expect(await names(list)).toEqual(["Winter 2"]);
    await page.keyboard.press("Enter");
    await list.getByRole("button", { name: "Winter", exact: true }).waitFor();
    await list.getByRole("button", { name: "Winter", exact: true }).press("Enter");
    await expect.poll(() => page.locator("#name").textContent()).toBe("Winter");
    expect(await cell(tryout, "Sheet1", 0, 0)).toBe("mine");
    expect(tryout.complaints).toEqual([]);
  });
});

/** What a maker does is kept: through a killed browser, a reload, a second tab, and storage that is refused. */

import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { later } from "./later";
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

  it("right after an edit has it all the same", async () => {
    const tryout = await tabs.tab(await tabs.profile(), true);
    await tryout.openWorkbook("An empty workbook");
    await tryout.type("C3", "just now");
    await reload(tryout);
    expect(await cell(tryout, "Sheet1", 2, 2)).toBe("just now");
  });

  it("in the midst of typing keeps what is typed in its cell", async () => {
    const tryout = await tabs.tab(await tabs.profile(), true);
    await tryout.openWorkbook("An empty workbook");
    await tryout.type("C5", "12");
    await tryout.goTo("C5");
    await tryout.page.keyboard.type("99");
    await reload(tryout);
    expect(await cell(tryout, "Sheet1", 4, 2)).toBe(99);
  });

  it("of a sample that nobody has changed leaves nothing in the list", async () => {
    const tryout = await tabs.tab(await tabs.profile(), true);
    await reload(tryout);
    await tryout.page.getByRole("button", { name: "Look at the demo" }).click();
    const list = await openList(tryout);
    expect(await list.textContent()).toContain("No workbook is kept yet.");
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

  it("may work on another workbook at the same time", async () => {
    const context = await tabs.profile();
    const one = await tabs.tab(context, true);
    await one.openWorkbook("An empty workbook");
    await one.type("A1", "one");
    await settled(one);
    const two = await tabs.tab(context);
    await two.openWorkbook("An empty workbook");
    await two.type("A1", "two");
    await settled(two);
    expect(await two.page.locator("#name").textContent()).toBe("My workbook 2");
    const list = await openList(two);
    expect(await names(list)).toEqual(["My workbook 2", "My workbook"]);
    expect(await list.locator("li", { hasText: "in another tab" }).locator(".name").textContent()).toBe("My workbook");
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

  it("for want of room is said at once, and taken back when there is room again", async () => {
    const context = await tabs.profile();
    await context.addInitScript(() => {
      const add = IDBObjectStore.prototype.add;
      IDBObjectStore.prototype.add = function (...given) {
        if ("isFull" in window) throw new DOMException("full", "QuotaExceededError");
        return add.apply(this, given);
      };
    });
    const tryout = await tabs.tab(context, true);
    await tryout.page.evaluate(() => Object.assign(window, { isFull: true }));
    await tryout.openWorkbook("An empty workbook");
    await expect
      .poll(() => tryout.page.getByRole("alert").allTextContents())
      .toContainEqual(expect.stringContaining("no room left"));
    await tryout.type("A1", "kept in the end");
    await tryout.page.evaluate(() => Reflect.deleteProperty(window, "isFull"));
    await tryout.type("A2", "one more");
    await settled(tryout);
    await reload(tryout);
    expect(await cell(tryout, "Sheet1", 0, 0)).toBe("kept in the end");
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

  it("goes back to an earlier state, and from there to the later one", async () => {
    const tryout = await tabs.tab(await tabs.profile(), true);
    await tryout.openWorkbook("An empty workbook");
    await settled(tryout);
    await tryout.type("A1", "first");
    await settled(tryout);
    const list = await openList(tryout);
    await list.getByRole("button", { name: "Earlier states: My workbook" }).click();
    await list
      .getByRole("button", { name: /^Go back to My workbook/ })
      .last()
      .click();
    await expect.poll(() => cell(tryout, "Sheet1", 0, 0)).toBeNull();
    await openList(tryout);
    await list.getByRole("button", { name: "Earlier states: My workbook" }).click();
    await list
      .getByRole("button", { name: /^Go back to My workbook/ })
      .first()
      .click();
    await expect.poll(() => cell(tryout, "Sheet1", 0, 0)).toBe("first");
  });

  it("goes to the ways on when the open workbook is removed, which can be put back", async () => {
    const tryout = await tabs.tab(await tabs.profile(), true);
    await tryout.openWorkbook("An empty workbook");
    await settled(tryout);
    const list = await openList(tryout);
    await list.getByRole("button", { name: "Remove: My workbook" }).press("Enter");
    await tryout.page.keyboard.press("Enter");
    await list.getByRole("button", { name: "Put back: My workbook" }).click();
    await list.getByRole("button", { name: "My workbook", exact: true }).click();
    await expect.poll(() => tryout.page.locator("#name").textContent()).toBe("My workbook");
  });

  it("has nothing that axe finds wrong and fits, small or dark", async () => {
    const tryout = await tabs.site.open({ width: 320, height: 640 });
    await tryout.openWorkbook("An empty workbook");
    await settled(tryout);
    const list = await openList(tryout);
    await list.getByRole("button", { name: "Duplicate: My workbook" }).click();
    await list.getByRole("button", { name: "My workbook 2", exact: true }).waitFor();
    await list.getByRole("button", { name: "Remove: My workbook", exact: true }).click();
    await list.getByRole("button", { name: "Rename: My workbook 2" }).click();
    for (const size of [{ width: 320 }, { width: 1280, dark: true }]) {
      await tryout.resize(size);
      expect(await tryout.faults(".workbooks")).toEqual([]);
      const box = await list.boundingBox();
      expect((box?.x ?? -1) >= 0 && (box?.x ?? 0) + (box?.width ?? 0) <= size.width).toBe(true);
      expect(await list.evaluate((element) => element.scrollWidth <= element.clientWidth)).toBe(true);
    }
  });
});

describe("a state that cannot be read any more", () => {
  it("gives way to the one before, and that is said", async () => {
    const tryout = await tabs.tab(await tabs.profile(), true);
    await tryout.openWorkbook("An empty workbook");
    await settled(tryout);
    await tryout.type("A1", "first");
    await settled(tryout);
    await tryout.type("A1", "second");
    await settled(tryout);
    await later(tryout.page, async () => {
      const database = await new Promise<IDBDatabase>((done) => {
        const request = indexedDB.open("pourwright");
        request.onsuccess = () => done(request.result);
      });
      const pieces = database.transaction("pieces", "readwrite").objectStore("pieces");
      const keys = await new Promise<IDBValidKey[]>((done) => {
        const request = pieces.getAllKeys();
        request.onsuccess = () => done(request.result);
      });
      pieces.delete(keys.at(-1) as IDBValidKey);
      await new Promise((done) => {
        pieces.transaction.oncomplete = done;
      });
    });
    await reload(tryout);
    expect(await alert(tryout)).toContain("The last changes cannot be read any more.");
    expect(await cell(tryout, "Sheet1", 0, 0)).toBe("first");
  });
});

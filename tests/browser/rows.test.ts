import { beforeAll, describe, expect, it } from "vitest";
import { later } from "./later";
import { OpenedSite } from "./opened";

/** Rows that a table does not take in by itself: they are pasted over a note that stood below it. */
describe("rows below a table, in a browser", () => {
  const site = new OpenedSite();
  const tryout = site.page();
  const pane = () => tryout.page.locator(".pourwright-pane");
  const button = (name: string | RegExp) => pane().getByRole("button", { name });
  const candles = () => pane().locator('.totals dt:text-is("Candles") + dd').textContent();

  beforeAll(async () => {
    await tryout.page.context().grantPermissions(["clipboard-read", "clipboard-write"], { origin: site.origin });
    await tryout.openWorkbook("An empty workbook");
    await button("Add starter tables").click();
    await pane().getByLabel("Pour from").waitFor();
    await tryout.openSheet("Vessels");
    await tryout.type("A5", "Tin");
    await tryout.type("B5", "125");
    // The fill is there before anything is looked up from it: 125 x 0.86, common practice, no source.
    expect((await tryout.table("Vessels")).rows[0]?.[3]).toBe(107.5);
    await tryout.openSheet("Batch");
    await tryout.type("A18", "a note");
    // Sixty rows of vessel, scent and quantity, as another spreadsheet would put them on the clipboard.
    const rows = Array.from({ length: 60 }, () => "Tin\t\t1").join("\n");
    await later(tryout.page, (text) => navigator.clipboard.writeText(text), rows);
    await tryout.goTo("A5");
    await tryout.page.keyboard.press("Control+V");
    await button(/Fix row 17/).waitFor();
  });

  it("stop the sheet: sixty pasted rows never pour twelve", async () => {
    expect(await tryout.cells("Batch", 63, 0, 1, 3)).toEqual([["Tin", null, 1]]);
    expect((await tryout.table("Batch")).rows).toHaveLength(12);
    expect(await button(/Fix row 17/).textContent()).toContain("48 rows right below the table, no part of it");
    expect(await button("Write run sheet").isDisabled()).toBe(true);
    expect(await tryout.faults(".pourwright-pane")).toEqual([]);
  });

  it("are left out by a press, which is said, and taken in by another: all sixty are poured", async () => {
    await button("Leave the 48 rows out of Batch").click();
    await button(/Check row 17.*48 rows below the table left out/).waitFor();
    await expect.poll(candles).toBe("12");
    await button("Take the 48 rows into Batch").click();
    await pane().getByText("Batch has 48 more rows now.").waitFor();
    await expect.poll(candles).toBe("60");
    const { rows } = await tryout.table("Batch");
    // 125 x 0.86: common practice, no source. The rows that were taken in have the table's formula.
    expect(rows).toHaveLength(60);
    expect(rows.map((row) => row[3])).toEqual(Array(60).fill(107.5));
    expect(await button(/Fix row/).count()).toBe(0);
    expect(await button("Write run sheet").isEnabled()).toBe(true);
  });

  it("a row whose fill formula is gone is filled from Vessels, and said", async () => {
    await tryout.goTo("D7");
    await tryout.page.keyboard.press("Delete");
    await button(/Check row 7.*worked out from the table of vessels/).waitFor();
    await expect.poll(candles).toBe("60");
  });

  it("a whole table in another unit is asked about", async () => {
    await tryout.openSettings();
    await pane().getByLabel("Weights in").selectOption("oz");
    // The heading says g: nothing is planned until the two agree.
    await button(/Fill weight \(g\).*differ/)
      .or(pane().getByText(/Fill weight \(g\).*differ/))
      .first()
      .waitFor();
    await pane().getByLabel("Weights in").selectOption("g");
    await tryout.openSheet("Vessels");
    await tryout.type("B5", "8");
    await pane()
      .getByText(/Every fill is very small for one in g/)
      .waitFor();
  });
});

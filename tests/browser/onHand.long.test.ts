import type { Locator } from "playwright-core";
import { beforeAll, describe, expect, it } from "vitest";
import { AT, kindOfKey, type SheetColumn } from "../../src/runsheet/sheet/layout";
import { columnLetters } from "../../src/sheet/columnLetters";
import { OpenedSite } from "./opened";
import { tableSheet } from "./tableSheet";

/** What was typed in On hand, and the first pour that is logged into moves without a row. Names and numbers are invented. */
describe("on hand as it was typed", () => {
  const tryout = new OpenedSite().page();
  const pane = (): Locator => tryout.page.locator(".pourwright-pane");
  const says = (text: string | RegExp) => pane().getByText(text).first().waitFor();
  const missing = () => pane().getByRole("list", { name: "Missing for this run" });
  const moves = async () => (await tryout.table("Moves")).rows.map(([, item, lot, change]) => [item, lot, change]);
  const runSheet = async () => (await tryout.sheetNames()).find((name) => name.startsWith("Run 2")) as string;

  beforeAll(async () => {
    await tryout.openWorkbook("An empty workbook");
    await tryout.host(
      "addSheet",
      tableSheet("Items", [
        ["Item", "Kind", "On hand (g)"],
        ["Wax", "wax", 1500],
        ["Cedar", "scent", 500],
        ["Tin", "tin", 15],
      ]),
    );
    await tryout.host(
      "addSheet",
      tableSheet("Batch", [
        ["Vessel", "Quantity", "Fill weight (g)", "Scent"],
        ["Tin", 10, 100, "Cedar"],
      ]),
    );
    await tryout.openView("Plan");
    await pane()
      .getByText(/^More tables:/)
      .click();
    await tryout.press("Add a table called Moves");
    await says(/^More tables: .*Moves/);
    await tryout.press("Write run sheet");
    await says(/^Run sheet written: Run/);
  });

  it("goes into the moves with the first pour, and what the moves leave counts from then on", async () => {
    const sheet = await runSheet();
    const cells = await tryout.host("readSheet", sheet);
    const at = (column: SheetColumn, kind: string) =>
      `${columnLetters(AT[column])}${cells.findIndex((row) => kindOfKey(row[AT.key]) === kind) + 1}`;
    await tryout.openSheet(sheet);
    // 10 x 100 x 1.03 = 1030 at 6 % of wax: 972 and 58.
    await tryout.type(at("actual", "wax"), "972");
    await tryout.type(at("actual", "scent"), "58");
    await tryout.type(at("good", "vessel"), "10");
    await tryout.press(`Log this pour: ${sheet}`);
    await says("Wax: +1500 g, what On hand says");
    await says(/^the first 3 rows are what stands in On hand/);
    for (const width of [1280, 320]) {
      await tryout.page.setViewportSize({ width, height: 800 });
      expect(await tryout.faults(".pourwright-pane")).toEqual([]);
    }
    await tryout.page.setViewportSize({ width: 1280, height: 800 });
    const before = await moves();
    await tryout.press(`Add these rows: ${sheet}`);
    await says(/is in the runs log now, 1 row, and in the moves, 6 rows/);
    const added = [
      ["Wax", null, 1500],
      ["Cedar", null, 500],
      ["Tin", null, 15],
      ["Wax", null, -972],
      ["Cedar", null, -58],
      ["Tin", null, -10],
    ];
    const written = async () => (await moves()).filter(([item]) => item !== null && item !== "");
    expect(await written()).toEqual(added);

    expect(await tryout.undoWords()).toMatch(/^Undo what the pane wrote on .*Moves/);
    // One press of undo takes back the log, the pour and what was carried over.
    await tryout.page.locator("[data-u-command='univer.command.undo']").first().click();
    await expect.poll(moves).toEqual(before);
    await tryout.press(`Log this pour: ${sheet}`);
    await tryout.press(`Add these rows: ${sheet}`);
    await expect.poll(written).toEqual(added);

    // By hand: 1500 - 972 = 528 are left for the next 972, and 5 tins for 10; of the scent there is enough.
    await tryout.openView("Plan");
    await missing().getByText("Wax: 444 g missing, no pack known").waitFor();
    await missing().getByText("Tin: 5 missing, no pack known").waitFor();
    expect(await missing().getByRole("listitem").count()).toBe(2);
    expect(
      await pane()
        .getByText(/the moves leave/)
        .count(),
    ).toBe(0);
    await tryout.openView("Stock");
    await says("528 g");
  });
});

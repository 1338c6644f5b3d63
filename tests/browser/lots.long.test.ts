import type { Locator } from "playwright-core";
import { beforeAll, describe, expect, it } from "vitest";
import { buildRun } from "../../src/runsheet/buildRun";
import { FIRST_SETTINGS } from "../../src/runsheet/settings";
import { describeRun } from "../../src/runsheet/sheet/describeRun";
import { AT, kindOfKey, type SheetColumn } from "../../src/runsheet/sheet/layout";
import { columnLetters } from "../../src/sheet/columnLetters";
import type { CellValue, Sheet } from "../../src/sheet/sheet";
import { OpenedSite } from "./opened";
import { tableSheet } from "./tableSheet";

const BATCH: CellValue[][] = [
  ["Vessel", "Quantity", "Fill weight (g)", "Scent"],
  ["Tin", 6, 106, "Cedar"],
];
const COMPONENTS: CellValue[][] = [
  ["Vessel", "Item", "Each"],
  ["Tin", "Wick", 1],
];
const LOT = "2026-330-01";
const SHEET = `Run ${LOT}`;

/** 6 tins of Cedar in one pot: 6 x 106 x 1.03 = 655.08, weighed out as 655: 618 and 37. */
function runSheet(): Sheet {
  const columns = { vessel: 0, quantity: 1, fill: 2, scent: 3 };
  const run = buildRun({ pour: { type: "pour", headings: [], rows: BATCH.slice(1), columns } }, FIRST_SETTINGS);
  return describeRun(run, { lot: LOT, date: 46_352, settings: FIRST_SETTINGS });
}

/** Lots from the supplier's pack to the candle, by mouse and keyboard; all names and numbers are invented. */
describe("lots", () => {
  const tryout = new OpenedSite().page();
  const pane = (): Locator => tryout.page.locator(".pourwright-pane");
  const press = (name: string) => tryout.press(name);
  const says = (text: string | RegExp) => pane().getByText(text).first().waitFor();
  const field = (label: string) => pane().getByRole("region", { name: "Receiving" }).getByLabel(label, { exact: true });
  const fill = (label: string, text: string) => field(label).fill(text);
  const rowsOf = async (table: string, headings: readonly string[]) => {
    const { headings: known, rows } = await tryout.table(table);
    return rows.map((row) => headings.map((heading) => row[known.indexOf(heading)]));
  };

  beforeAll(async () => {
    await tryout.openWorkbook("An empty workbook");
    await tryout.host("addSheet", tableSheet("Components", COMPONENTS));
    await tryout.host("addSheet", tableSheet("Batch", BATCH));
    await tryout.host("addSheet", runSheet());
    await tryout.openView("Log");
    await pane()
      .getByRole("button", { name: `Log this pour: ${SHEET}`, exact: true })
      .waitFor();
  });

  it("come in by the pane, the first beginning the table, also on a narrow page and by keyboard", async () => {
    await tryout.openView("Stock");
    const receive = async (item: string, lot: string, quantity: string, unit: string, paid: string) => {
      await fill("Item", item);
      await fill("Lot", lot);
      await fill("Quantity", quantity);
      await field("Unit").selectOption(unit);
      await fill("Received", "2026-11-20");
      await fill("Paid for all of it", paid);
    };
    await receive("Wax", "W-1", "400", "g", "4");
    await says("Moves, a new table, with:");
    await says("Wax, lot W-1: +400 g, paid 4");
    await tryout.page.setViewportSize({ width: 320, height: 640 });
    expect(await tryout.faults(".pourwright-pane")).toEqual([]);
    await press("Add anyway");
    await says("Wax, lot W-1: +400 g, paid 4 is in Moves now.");
    await receive("Wax", "W-2", "2 x 1", "kg", "20");
    await press("Add to moves");
    await says(/^Wax, lot W-2: \+2 kg, paid 20 is in Moves now/);
    await receive("cedar", "C-1", "100", "g", "12");
    await field("Note").press("Tab");
    await tryout.page.keyboard.press("Enter");
    await says(/^Cedar, lot C-1: \+100 g, paid 12 is in Moves now/);
    await receive("Tin", "T-1", "24", "pieces", "");
    await press("Add to moves");
    await says(/^Tin, lot T-1: \+24 pieces is in Moves now/);
    await tryout.page.setViewportSize({ width: 1280, height: 800 });
    // 2026-11-20 is 46346.
    expect(await rowsOf("Moves", ["Date", "Item", "Lot", "Change (g)", "Paid"])).toEqual([
      [46_346, "Wax", "W-1", 400, 4],
      [46_346, "Wax", "W-2", 2000, 20],
      [46_346, "Cedar", "C-1", 100, 12],
      [46_346, "Tin", "T-1", 24, null],
    ]);
  });

  it("go out by the pour: one that is written, the oldest where none is, a spoilt candle too, in both tables", async () => {
    const cells = await tryout.host("readSheet", SHEET);
    const rowOf = (kind: string) => cells.findIndex((row) => kindOfKey(row[AT.key]) === kind) + 1;
    const at = (column: SheetColumn, kind: string) => `${columnLetters(AT[column])}${rowOf(kind)}`;
    await tryout.openSheet(SHEET);
    await tryout.type(at("actual", "wax"), "620");
    await tryout.type(at("lotUsed", "wax"), "w-2");
    await tryout.type(at("actual", "scent"), "37");
    // Five of six came out good.
    await tryout.type(at("good", "vessel"), "5");
    await press(`Log this pour: ${SHEET}`);
    await says("Cedar, Tin: 6 candles, 5 good, wax 620 g, scent 37 g");
    await says("Wax, lot W-2: -620 g");
    await says("no lot written for Cedar: the oldest, C-1, is taken");
    await says("Wick: nothing is on hand by the moves, so its row has no lot");
    expect(await tryout.faults(".pourwright-pane")).toEqual([]);
    expect((await tryout.tables()).map(({ name }) => name)).not.toContain("RunsLog");
    await press(`Add these rows: ${SHEET}`);
    await says(`Lot ${LOT} is in the runs log now, 1 row, and in the moves, 4 rows.`);
    const logged = [[LOT, "Cedar", "Tin", 6, 5, 620, 37, "Cedar: pot 1 of 1"]];
    const headings = ["Lot", "Scent", "Vessel", "Candles", "Good", "Wax actual", "Scent actual", "Pots"];
    expect(await rowsOf("RunsLog", headings)).toEqual(logged);
    const moved = [
      ["Wax", "W-2", -620, LOT],
      ["Cedar", "C-1", -37, LOT],
      ["Tin", "T-1", -6, LOT],
      ["Wick", null, -6, LOT],
    ];
    const moves = async () => (await rowsOf("Moves", ["Item", "Lot", "Change (g)", "Run"])).slice(4);
    expect(await moves()).toEqual(moved);

    // One press of undo takes back both.
    await tryout.page.locator("[data-u-command='univer.command.undo']").first().click();
    await expect.poll(async () => (await tryout.tables()).map(({ name }) => name)).not.toContain("RunsLog");
    expect(await moves()).toEqual([]);
    await press(`Log this pour: ${SHEET}`);
    await says("Wax, lot W-2: -620 g");
    await press(`Add these rows: ${SHEET}`);
    await expect.poll(moves).toEqual(moved);
    expect(await rowsOf("RunsLog", headings)).toEqual(logged);
  });
});

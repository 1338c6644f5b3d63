// @vitest-environment happy-dom
import { describe, expect, it } from "vitest";
import type { CellValue } from "../../src/sheet/sheet";
import { FakeHost } from "./fakeHost";
import { openPane } from "./openPane";

const BATCH: CellValue[][] = [
  ["Vessel", "Quantity", "Fill weight (g)", "Scent"],
  ["Tin", 10, 100, "Cedar"],
];
// 46300 is 2026-10-05.
const MOVES: CellValue[][] = [
  ["Date", "Item", "Lot", "Change (g)", "Run"],
  [46_300, "Cedar oil", "C-1", 100, null],
  [46_310, "Cedar oil", "C-1", -60, "2026-288-01"],
  [46_311, "Cedar oil", "C-1", -30, "2026-289-01"],
  [46_312, "Cedar oil", null, -5, "2026-290-01"],
  [46_300, "Lids", null, 50, null],
  [46_310, "Lids", null, -8, "2026-288-01"],
];
const LOG: CellValue[][] = [
  ["Lot", "Date", "Scent", "Vessel", "Candles", "Good", "Wax planned", "Weighed each", "Water weight"],
  ["2026-288-01", 46_310, "Cedar", "Tin", 8, 7, 800, null, null],
];

describe("following a lot", () => {
  const { show, type, press, section, shown, beside, offered } = openPane("pane-tracing", "trace");
  const RECIPES: CellValue[][] = [
    ["Scent", "Ingredient", "Share", "Basis"],
    ["Cedar", "Cedar oil", 0.06, "of wax"],
  ];
  const book = () => new FakeHost({ Batch: BATCH, Moves: MOVES, RunsLog: LOG, Recipes: RECIPES });

  it("tells the runs and candles that hold it, what may, and what is left, and writes the list", async () => {
    const host = book();
    await show(host);
    expect(offered("Item")).toEqual(["Cedar oil", "Lids"]);
    await type({ Item: "cedar oil" });
    expect(offered("Lot of the item")).toEqual(["C-1"]);
    expect(shown()).toEqual([]);
    await type({ "Lot of the item": "c-1" });
    expect(shown()).toEqual([
      "Cedar oil, lot C-1, came in on 2026-10-05.",
      "In 2 runs: 2026-288-01 (8 Tin, Cedar); 2026-289-01 (not in the log: candles not known).",
      "May be in 1 run more, which names no lot of it: 2026-290-01.",
      // 100 - 60 - 30.
      "Left on the shelf: 10 g.",
    ]);
    await press("Write recall list");
    expect(host.added.map(({ name }) => name)).toEqual(["Recall Cedar oil C-1"]);
  });

  it("tells of a run that names the lot with others, and names none twice", async () => {
    const moves = [
      ...MOVES,
      [46_310, "Cedar oil", null, -2, "2026-288-01"],
      [46_310, "Cedar oil", "C-3, C-4", -9, "2026-288-01"],
    ];
    await show(new FakeHost({ Batch: BATCH, Moves: moves, RunsLog: LOG, Recipes: RECIPES }));
    await type({ Item: "Cedar oil", "Lot of the item": "C-3" });
    expect(shown()).toEqual([
      "Cedar oil, lot C-3, never came in by the moves.",
      "No run is known to have taken of it.",
      "May be in 2 runs, which name no lot of it: 2026-288-01, 2026-290-01.",
      "May be in 2026-288-01 (8 Tin, Cedar), which names C-3, C-4.",
      "C-3, C-4 stands in the moves as one lot, and this may be one of them: trace that too.",
      "Left on the shelf: 0 g.",
    ]);
    await type({ "Lot of the item": "C-1" });
    expect(shown().slice(1, 3)).toEqual([
      "In 2 runs: 2026-288-01 (8 Tin, Cedar); 2026-289-01 (not in the log: candles not known).",
      "May be in 1 run more, which names no lot of it: 2026-290-01.",
    ]);
  });

  it("tells what went into a run, the newest offered first, and writes it", async () => {
    const host = book();
    await show(host);
    expect(offered("Lot of a run")).toEqual(["2026-290-01", "2026-289-01", "2026-288-01"]);
    await type({ "Lot of a run": "2026-288-01" });
    expect(shown()).toEqual(["Cedar oil, lot C-1: 60 g", "Lids, no lot written: 8 (g or pieces)"]);
    await press("Write what went in");
    expect(host.added.map(({ name }) => name)).toEqual(["Made of 2026-288-01"]);
  });

  it("follows all of an item of which no lot was ever written", async () => {
    await show(book());
    await type({ Item: "Lids" });
    expect(shown()).toEqual([
      "Lids, no lot written, came in on 2026-10-05.",
      "In 1 run: 2026-288-01 (8 Tin, Cedar).",
      "Left on the shelf: 42 (g or pieces).",
    ]);
  });

  it("says beside a field what no move names, and writes nothing then", async () => {
    const host = book();
    await show(host);
    await type({ "Lot of the item": "C-1" });
    expect(beside("Item")).toBe("write whose lot it is");
    await type({ Item: "Moss oil" });
    expect(beside("Item")).toBe("no move names Moss oil");
    await type({ Item: "Cedar oil" });
    await type({ "Lot of the item": "C-9" });
    expect(beside("Lot of the item")).toBe("no move names lot C-9 of Cedar oil");
    await type({ "Lot of a run": "2026-001-01" });
    expect(beside("Lot of a run")).toBe("neither the log nor a move names run 2026-001-01");
    await press("Write recall list");
    await press("Write what went in");
    expect(host.added).toEqual([]);
  });

  it("says how it begins in a workbook without moves", async () => {
    await show(new FakeHost({ Batch: BATCH }));
    expect(section().textContent).toContain("no table of moves yet, so no lot can be followed");
  });
});

// @vitest-environment happy-dom
import { describe, expect, it } from "vitest";
import type { CellValue } from "../../src/sheet/sheet";
import { FakeHost } from "./fakeHost";
import { openPane } from "./openPane";

const BATCH: CellValue[][] = [
  ["Vessel", "Quantity", "Fill weight (g)", "Scent"],
  ["Tin", 10, 100, "Cedar oil"],
];
const MOVES: CellValue[][] = [
  ["Date", "Item", "Lot", "Change (g)", "Paid", "Run"],
  [46_300, "Cedar oil", "C-1", 100, 20, null],
  [46_305, "Cedar oil", "C-2", 50, 15, null],
  [46_310, "Cedar oil", "C-1", -60, null, "2026-288-01"],
  [46_300, "Tin", "T-1", 12, null, null],
];

describe("what is on the shelf", () => {
  const { show, reopen, section } = openPane("pane-shelf", "stock");
  const rows = () =>
    [...section().querySelectorAll("tbody tr")].map((row) => [...row.children].map((cell) => cell.textContent));

  it("is told lot by lot with its worth, and what no price is written for", async () => {
    await show(new FakeHost({ Batch: BATCH, Moves: MOVES }));
    // 40 left at 20 / 100 and 50 at 15 / 50: 8 and 15.
    expect(rows()).toEqual([
      ["Cedar oilC-1: 40, C-2: 50", "90 g", "23.00"],
      ["TinT-1: 12", "12", "no price"],
    ]);
    expect(section().textContent).toContain("Worth 23.00 in all, each lot at what it cost.");
    expect(section().textContent).toContain("No price is written for Tin, lot T-1: not in the sum.");
  });

  it("tells of a lot of which more went out than came in, and of moves that cannot be read", async () => {
    await show(new FakeHost({ Batch: BATCH, Moves: [...MOVES, [46_311, "Cedar oil", "C-1", -50, null, null]] }));
    expect(section().textContent).toContain("Of Cedar oil, lot C-1, more went out than came in");
    await reopen(new FakeHost({ Batch: BATCH, Moves: [["Date", "Item", "Lot"]] }));
    expect(section().querySelector(".wrong")?.textContent).toContain("Change");
  });

  it("tells of an item of which more went out than came in, without a lot", async () => {
    const moves = [...MOVES, [46_311, "Tin", null, -20, null, "2026-289-01"], [46_311, "Cedar oil", null, -5]];
    await show(new FakeHost({ Batch: BATCH, Moves: moves }));
    expect([...section().querySelectorAll(".wrong")].map(({ textContent }) => textContent)).toContain(
      "Of Tin, 8 more went out than came in: add what was on the shelf before, under Receiving.",
    );
    expect(section().textContent).not.toContain("Of Cedar oil");
  });

  it("is nothing in a workbook without moves", async () => {
    await show(new FakeHost({ Batch: BATCH }));
    expect(section().textContent).toContain("There is no table of moves yet.");
  });
});

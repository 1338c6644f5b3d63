// @vitest-environment happy-dom
import { act } from "react";
import { createRoot, type Root } from "react-dom/client";
import { afterEach, beforeEach, describe, expect, it } from "vitest";
import { Pane } from "../../src/pane/Pane";
import type { CellValue } from "../../src/sheet/sheet";
import { FakeHost } from "./fakeHost";

Object.assign(globalThis, { IS_REACT_ACT_ENVIRONMENT: true });

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
  let root: Root;
  let element: HTMLElement;
  beforeEach(() => {
    element = document.body.appendChild(document.createElement("div"));
    root = createRoot(element);
  });
  afterEach(async () => {
    await act(async () => root.unmount());
    element.remove();
  });
  const wait = () => act(() => new Promise((done) => setTimeout(done, 0)));
  const section = () => element.querySelector("[aria-labelledby=pane-shelf]") as HTMLElement;
  const show = async (tables: Record<string, CellValue[][]>) => {
    await act(async () => root.render(<Pane host={new FakeHost(tables)} />));
    await wait();
    await act(async () => document.getElementById("pane-tab-stock")?.click());
    await wait();
  };
  const rows = () =>
    [...section().querySelectorAll("tbody tr")].map((row) => [...row.children].map((cell) => cell.textContent));

  it("is told lot by lot with its worth, and what no price is written for", async () => {
    await show({ Batch: BATCH, Moves: MOVES });
    // 40 left at 20 / 100 and 50 at 15 / 50: 8 and 15.
    expect(rows()).toEqual([
      ["Cedar oilC-1: 40, C-2: 50", "90 g", "23.00"],
      ["TinT-1: 12", "12", "no price"],
    ]);
    expect(section().textContent).toContain("Worth 23.00 in all, each lot at what it cost.");
    expect(section().textContent).toContain("No price is written for Tin, lot T-1: not in the sum.");
  });

  it("tells of a lot of which more went out than came in, and of moves that cannot be read", async () => {
    await show({ Batch: BATCH, Moves: [...MOVES, [46_311, "Cedar oil", "C-1", -50, null, null]] });
    expect(section().textContent).toContain("Of Cedar oil, lot C-1, more went out than came in");
    await act(async () => root.unmount());
    root = createRoot(element);
    await show({ Batch: BATCH, Moves: [["Date", "Item", "Lot"]] });
    expect(section().querySelector(".wrong")?.textContent).toContain("Change");
  });

  it("is nothing in a workbook without moves", async () => {
    await show({ Batch: BATCH });
    expect(section().textContent).toContain("There is no table of moves yet.");
  });
});

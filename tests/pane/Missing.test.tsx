// @vitest-environment happy-dom
import { describe, expect, it } from "vitest";
import type { CellValue } from "../../src/sheet/sheet";
import { FakeHost } from "./fakeHost";
import { openPane } from "./openPane";

const BATCH: CellValue[][] = [
  ["Vessel", "Quantity", "Fill weight (g)", "Load"],
  ["Tin", 10, 100, 0],
];

describe("what is missing for the run", () => {
  const { show, section } = openPane("pane-preview");
  const missing = () =>
    [...section().querySelectorAll("ul[aria-labelledby]:first-of-type > li")].map(({ textContent }) => textContent);

  it("is what the scale can show, and rather a little more", async () => {
    const items: CellValue[][] = [
      ["Item", "Kind", "On hand (g)"],
      ["Wax", "wax", 1020.718474],
      ["Tin", "tin", 7],
    ];
    await show(new FakeHost({ Batch: BATCH, Items: items }));
    // 10 x 100 x 1.03 = 1030 are melted, on a scale that reads to 1 g: 9.281526 g are missing.
    expect(missing()).toEqual(["Wax: 10 g missing, no pack known", "Tin: 3 missing, no pack known"]);
  });
});

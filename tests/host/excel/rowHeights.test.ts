import { describe, expect, it } from "vitest";
import { rowHeights } from "../../../src/host/excel/rowHeights";
import type { Cell } from "../../../src/sheet/sheet";

describe("heights of rows in Excel", () => {
  const heights = (...cells: Cell[]) => [...rowHeights({ name: "", widths: [20, 20], cells }).keys()];

  it("are said of texts across columns and of rows that are to have room, and left to Excel else", () => {
    const text = { text: "one two three four five six seven eight nine ten eleven" };
    expect(heights({ row: 0, column: 0, content: text, look: "note" })).toEqual([]);
    expect(heights({ row: 1, column: 0, content: text, look: "note", across: 2 })).toEqual([1]);
    expect(heights({ row: 2, column: 0, content: { formula: "=A1" }, look: "alert", lines: 2 })).toEqual([2]);
    expect(heights({ row: 3, column: 0, content: { formula: "=A1" }, look: "alert" })).toEqual([]);
  });
});

import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { address, addressLists, type Marked, rectangles, spanOf } from "../../../src/host/excel/rectangles";

const marked: fc.Arbitrary<Marked> = fc.record({
  row: fc.integer({ min: 0, max: 9 }),
  column: fc.integer({ min: 0, max: 6 }),
  kind: fc.constantFrom("a", "b"),
});

describe("rectangles", () => {
  it("cover each cell once, by its own kind", () => {
    fc.assert(
      fc.property(fc.array(marked, { maxLength: 60 }), (cells) => {
        const wanted = new Map(cells.map(({ row, column, kind }) => [`${row},${column}`, kind]));
        const covered = new Map<string, string>();
        for (const [kind, blocks] of rectangles(cells)) {
          for (const { row, column, rows, columns } of blocks) {
            for (let r = row; r < row + rows; r++) {
              for (let c = column; c < column + columns; c++) {
                expect(covered.has(`${r},${c}`)).toBe(false);
                covered.set(`${r},${c}`, kind);
              }
            }
          }
        }
        expect(new Map([...covered].sort())).toEqual(new Map([...wanted].sort()));
      }),
    );
  });

  it("are few: one for a block however large, one for each stripe", () => {
    const block = Array.from({ length: 1000 }, (_, i) => ({ row: i % 100, column: Math.floor(i / 100), kind: "a" }));
    expect(rectangles(block).get("a")).toEqual([{ row: 0, column: 0, rows: 100, columns: 10 }]);
    const striped = block.map((cell) => ({ ...cell, kind: cell.row % 2 ? "a" : "b" }));
    expect(rectangles(striped).get("b")).toHaveLength(50);
  });
});

describe("the span of cells", () => {
  it("reaches from the first to the last, in whatever order they come", () => {
    const cells = [
      { row: 4, column: 2 },
      { row: 1, column: 6 },
      { row: 3, column: 1 },
    ];
    expect(spanOf(cells)).toEqual({ row: 1, column: 1, rows: 4, columns: 6 });
  });

  it("is found of more cells than one call takes as arguments", () => {
    const cells = Array.from({ length: 300_000 }, (_, i) => ({ row: i, column: i % 7 }));
    expect(spanOf(cells)).toEqual({ row: 0, column: 0, rows: 300_000, columns: 7 });
  });
});

describe("addresses", () => {
  it("name one cell and a block", () => {
    expect(address({ row: 1, column: 1, rows: 1, columns: 1 })).toBe("B2");
    expect(address({ row: 1, column: 1, rows: 8, columns: 2 })).toBe("B2:C9");
  });
  it("are joined into lists that Excel takes, none lost", () => {
    const all = Array.from({ length: 5000 }, (_, i) => `A${i + 1}:B${i + 1}`);
    const lists = addressLists(all);
    expect(lists.join(",").split(",")).toEqual(all);
    // The 8,192 characters are in the documentation of Worksheet.getRange.
    expect(Math.max(...lists.map((list) => list.length))).toBeLessThanOrEqual(8192);
    expect(lists.length).toBeLessThan(12);
  });
});

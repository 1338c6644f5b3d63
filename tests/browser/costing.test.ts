import { beforeAll, describe, expect, it } from "vitest";
import { type Expected, expectedRange } from "../samples/expectedRange";
import { SavedBook } from "../samples/saved";
import { OpenedSite } from "./opened";

describe("the costing workbook in the browser", () => {
  const tryout = new OpenedSite().page();
  let book: SavedBook;

  beforeAll(async () => {
    book = await SavedBook.open("2-costing.xlsx");
    await tryout.openWorkbook("Demo costing");
  });

  /** The range as the spreadsheet computes it. */
  async function range(): Promise<Expected[]> {
    const { headings, rows } = await tryout.table("Range");
    return rows.map((cells) => {
      const number = (heading: string): number => Number(cells[headings.indexOf(heading)]);
      return {
        candle: String(cells[headings.indexOf("Candle")]),
        cost: number("Cost"),
        margin: number("Margin now"),
        ask: number("Asking price"),
        costThen: number("Cost with dearer wax"),
        marginThen: number("Margin with dearer wax"),
        askThen: number("Asking price with dearer wax"),
      };
    });
  }

  function expectSame(read: readonly Expected[], wanted: readonly Expected[]): void {
    expect(read.map(({ candle }) => candle)).toEqual(wanted.map(({ candle }) => candle));
    for (const [i, one] of wanted.entries()) {
      for (const [name, value] of Object.entries(one)) {
        if (typeof value === "number")
          expect(read[i]?.[name as "cost"], `${one.candle}: ${name}`).toBeCloseTo(value, 10);
      }
    }
  }

  it("opens from the list with every candle costed, and nothing to fix", async () => {
    const read = await range();
    expect(read).toHaveLength(20);
    expectSame(read, expectedRange(book));
    expect(await tryout.problems()).toEqual([]);
  });

  it("moves cost, margin and asking price of every candle when one wax price is typed", async () => {
    const before = await range();
    await tryout.openSheet("Prices");
    expect(await tryout.cells("Prices", 4, 0, 1, 3)).toEqual([["Soy wax", "wax", 92]]);
    await tryout.type("C5", "120");
    const after = await range();
    expectSame(after, expectedRange(book, { "Soy wax": 120 }));
    for (const [i, one] of after.entries()) {
      const was = before[i] as Expected;
      expect(one.cost, one.candle).toBeGreaterThan(was.cost + 0.05);
      expect(one.margin, one.candle).toBeLessThan(was.margin - 0.003);
      expect(one.ask, one.candle).toBeGreaterThan(was.ask + 0.1);
    }
  });

  it("follows the share of a recipe, which a formula spills", async () => {
    const [[before]] = (await tryout.cells("Candles", 23, 7)) as [[number]];
    await tryout.openSheet("Recipes");
    expect(await tryout.cells("Recipes", 25, 1, 1, 5)).toEqual([["Beeswax", 1, "part", "wax", 20]]);
    // Four parts of soy wax and four of beeswax, which is dearer.
    await tryout.type("C26", "4");
    expect(await tryout.cells("Recipes", 25, 5)).toEqual([[50]]);
    expect(await tryout.cells("Weights", 24, 2, 1, 4)).toEqual([[29, 0, 0, 29]]);
    const [[after]] = (await tryout.cells("Candles", 23, 7)) as [[number]];
    expect(after).toBeGreaterThan(before);
  });
});

import { beforeAll, describe, expect, it } from "vitest";
import { type Expected, expectedCandles } from "../samples/expectedCandles";
import { SavedBook } from "../samples/saved";
import { OpenedSite } from "./opened";

describe("the candles of the studio in the browser", () => {
  const tryout = new OpenedSite().page();
  let book: SavedBook;

  beforeAll(async () => {
    book = await SavedBook.open("1-studio.xlsx");
  });

  /** The candles as the spreadsheet computes them, free rows left out. */
  async function candles(): Promise<Expected[]> {
    const { headings, rows } = await tryout.table("Candles");
    const named = rows.filter(([candle]) => candle !== null && candle !== "");
    return named.map((cells) => {
      const number = (heading: string): number => Number(cells[headings.indexOf(heading)]);
      return {
        candle: String(cells[headings.indexOf("Candle")]),
        fill: number("Fill (g)"),
        cost: number("Cost"),
        margin: number("Margin now"),
        ask: number("Asking price"),
        marginThen: number("Margin with dearer wax"),
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

  it("are all costed, and moved by what was paid for the last lot of wax", async () => {
    const before = await candles();
    expectSame(before, expectedCandles(book));
    await tryout.openSheet("Moves");
    const { rows } = await tryout.table("Moves");
    const at = 5 + rows.findIndex(([, item, lot]) => item === "Wax" && lot === "W-0931");
    await tryout.type(`E${at}`, "80");
    const after = await candles();
    expectSame(after, expectedCandles(book, { Wax: 0.008 }));
    expect(after[0]?.cost).toBeGreaterThan((before[0]?.cost ?? 0) + 0.2);
    await tryout.type(`E${at}`, "60.5");
  });

  it("are one more when a row is written right below the table, which takes in its formulas", async () => {
    await tryout.openSheet("Candles");
    const { rows } = await tryout.table("Candles");
    const below = 14 + rows.length;
    await tryout.paste(`A${below}`, [["Rain, hexagon jar", "Hexagon jar", "Rain on slate", 5, 14]]);
    await expect.poll(async () => (await tryout.table("Candles")).rows.length).toBe(rows.length + 1);
    // By hand: 147.92 g of fill; wax and 5 % of wax of oil; jar 1.5, wick 0.09, lid 0.6, label 0.04, work 1.25.
    const wax = 147.92 / 1.05;
    const cost = (wax * 0.00605 + wax * 0.05 * 0.054 + 2.23 + 1.25) / 0.96;
    const [found] = (await candles()).slice(-1);
    expect(found).toMatchObject({ candle: "Rain, hexagon jar" });
    expect(found?.cost).toBeCloseTo(cost, 9);
    expect(found?.margin).toBeCloseTo((14 * 0.935 - 0.25 - cost) / 14, 9);
    expect((await tryout.cells("Candles", below - 1, 12, 1, 2)).flat()).toEqual(["Net Wt 5.21 oz (147 g)", null]);
  });
});

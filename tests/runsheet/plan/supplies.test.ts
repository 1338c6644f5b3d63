import { describe, expect, it } from "vitest";
import { buildRun } from "../../../src/runsheet/buildRun";
import type { Beside } from "../../../src/runsheet/plan/beside";
import { FIRST_SETTINGS, type Settings } from "../../../src/runsheet/settings";
import { matchColumns, type TableTypeId } from "../../../src/runsheet/tables/registry";
import type { Tables } from "../../../src/runsheet/tables/tableRows";
import type { CellValue } from "../../../src/sheet/sheet";
import { DAY } from "../stock/moved";

const HEADINGS = {
  pour: ["Vessel", "Quantity", "Fill weight"],
  components: ["Vessel", "Item", "Each"],
  items: [
    ...[
      "Item",
      "Kind",
      "On hand",
      "Pack size",
      "Pack price",
      "Unit price (per g)",
      "Reorder below",
      "Supplier",
      "Delivery",
    ],
  ],
  moves: ["Date", "Item", "Lot", "Change", "Paid", "Best before", "Run", "Note"],
  stock: ["Item", "On hand", "Pack size", "Pack price"],
} satisfies Partial<Record<TableTypeId, string[]>>;
type Rows = Partial<Record<keyof typeof HEADINGS, CellValue[][]>>;

/** A run of ten unscented tins of 200 g, where nothing else is given: 2000 of wax and ten tins. */
function run(rows: Rows, beside: Beside = { today: DAY }, settings: Partial<Settings> = {}) {
  const tables = Object.entries({ pour: [["Tin", 10, 200] as CellValue[]], ...rows }).map(([type, rows]) => {
    const headings = HEADINGS[type as keyof typeof HEADINGS];
    return [type, { type, headings, rows, columns: matchColumns(type as TableTypeId, headings) }];
  });
  const all = { ...FIRST_SETTINGS, load: 0, loss: 0, ...settings };
  return buildRun(Object.fromEntries(tables) as Tables, all, beside);
}
const texts = ({ problems }: ReturnType<typeof run>) => problems.map(({ severity, text }) => `${severity}: ${text}`);
const item = (name: string, onHand: number | null, ...more: CellValue[]): CellValue[] => [name, null, onHand, ...more];
const TIN = item("Tin", 10);

describe("what is on hand", () => {
  it("is the sum of the moves where there are any, whatever the table of items says", () => {
    const moves: CellValue[][] = [
      [DAY - 9, "Wax", "A", 1500],
      [DAY - 5, "wax", "A", -300],
      [DAY - 2, "Wax", "B", 600],
    ];
    const made = run({ items: [item("Wax", 9999), TIN], moves });
    expect(made.shelf?.lacks).toMatchObject([{ item: "Wax", amount: 2000, onHand: 1800, missing: 200 }]);
    expect(run({ items: [item("Wax", 9999), TIN] }).shelf?.lacks).toEqual([]);
  });

  it("is asked about where On hand says what is not in the moves", () => {
    const asked = (onHand: number, ...moves: CellValue[][]) =>
      texts(run({ items: [item("Wax", onHand), TIN], moves })).filter((text) => text.includes("the moves leave"));
    const used: CellValue[] = [DAY - 2, "Wax", null, -7729, null, null, "2026-328-01"];
    expect(asked(12_500, used)).toEqual([
      "warning: Wax: On hand says 12500 g and the moves leave -7729 g, which is what counts. Was 12500 g there before the first of them? Then add it to Moves as a row of its own; else clear On hand",
    ]);
    // Put into the moves it is no question, in whatever lots, nor where it follows them.
    expect(asked(12_500, [DAY - 3, "wax", null, 12_500], used)).toEqual([]);
    const note = "carried over from On hand";
    const split: CellValue[][] = [
      [DAY - 3, "Wax", "A", 12_000, 40, null, null, note],
      [DAY - 3, "Wax", "B", 500, null, null, null, note],
    ];
    expect(asked(12_500, ...split, used)).toEqual([]);
    expect(asked(4771, ...split, used)).toEqual([]);
    // What came in with a price is no opening, and a count of another item none of this one.
    expect(asked(5000, [DAY - 3, "Wax", "A", 5000, 40], [DAY - 3, "Wick", null, 5000], used)).toHaveLength(1);
    // Nothing that was there before is nothing to bring in.
    expect(asked(0, [DAY - 3, "Wax", "A", 5000, 40])).toEqual([]);
  });

  it("is looked for under a near name, which is offered where no table knows the item", () => {
    const absent = "Wax: in no table of items, so its stock is not checked";
    const said = (...items: CellValue[][]) => texts(run({ items })).filter((text) => text.includes("in no table"));
    expect(said(item("Waxx", 5000), TIN)).toEqual([`warning: ${absent}. Is it Waxx?`]);
    expect(said(item("Wick", 5000), TIN)).toEqual([`warning: ${absent}`]);
    // What is counted is no wax, and what the run uses itself is another item.
    expect(said(["Waxx", "lid", 5000], TIN)).toEqual([`warning: ${absent}`]);
    const components: CellValue[][] = [["Tin", "Tine", 1]];
    expect(texts(run({ components, items: [item("Wax", 5000), TIN] }))).toContain(
      "warning: Tine: in no table of items, so its stock is not checked",
    );
    const priced: CellValue[][] = [
      ["Waxx", null, 1, null, null, 0.01],
      ["Tin", null, 10, null, null, 1],
    ];
    expect(texts(run({ items: priced }))).toContain("warning: Wax has no price; the cost is left out. Is it Waxx?");
  });

  it("is asked about where more went out than came in, of whatever lot", () => {
    expect(texts(run({ items: [TIN], moves: [[DAY, "Wax", null, -300]] }))).toEqual([
      "warning: Wax: the moves leave -300 g, for more went out than came in. Add to Moves what was there before, or what came in since",
    ]);
    const both: CellValue[][] = [
      [DAY, "Wax", "A", 5000],
      [DAY, "Wax", null, -300],
    ];
    expect(texts(run({ items: [TIN], moves: both }))).toEqual([]);
  });

  it("leaves out lots past their best before, by name, until a new one is written", () => {
    const moves: CellValue[][] = [
      [DAY - 90, "Wax", "A", 1500, null, DAY - 1],
      [DAY - 2, "Wax", "B", 600, null, DAY],
    ];
    const made = run({ items: [TIN], moves });
    expect(made.shelf?.lacks).toMatchObject([{ onHand: 600, missing: 1400 }]);
    expect(texts(made)).toContain(
      "warning: Wax: 1500 of lot A is past its best before, 2026-11-25, and does not count. If it is still good, add a row of 0 to Moves with its new best before",
    );
    const tested = run({ items: [TIN], moves: [...moves, [DAY, "Wax", "A", 0, null, DAY + 60]] });
    expect(tested.shelf?.lacks).toEqual([]);
    expect(texts(tested)).toEqual([]);
  });

  it("is less what run sheets that are not logged will take", () => {
    const weighed = [{ item: "wax", amount: 700 }];
    const open = { lot: "2026-331-01", date: DAY, candles: [], ingredients: ["wax"], weighed, vessels: [] };
    const made = run({ items: [item("Wax", 2500), TIN] }, { today: DAY, openRuns: [open] });
    expect(made.shelf?.lacks).toMatchObject([{ item: "Wax", onHand: 1800, reserved: 700, missing: 200 }]);
    expect(texts(made)).toEqual(["warning: Wax: also planned: run 2026-331-01, 700 g"]);
  });

  it("is not known where nobody wrote it, or where a row of its moves is wrong, and that is said", () => {
    const made = run({ items: [item("Wax", null), TIN] });
    expect(made.shelf?.unchecked).toEqual(["Wax"]);
    expect(texts(made)).toEqual(["warning: Wax: nothing is written in On hand, so its stock is not checked"]);
    const wrong = run({ items: [TIN], moves: [[DAY, "Wax", "A", "two bags"]] });
    expect(wrong.shelf?.unchecked).toEqual(["Wax"]);
    expect(texts(wrong)).toEqual(['warning: Change: "two bags" is not a number; write a plain number']);
  });

  it("names lots of which more went out than came in", () => {
    const moves: CellValue[][] = [
      [DAY, "Wax", "A", 5000],
      [DAY, "Wax", "B", -10],
    ];
    expect(texts(run({ items: [TIN], moves }))).toEqual([
      "warning: Wax: more of lot B went out than came in; add what came in, or put its lot right by two more rows",
    ]);
  });

  it("comes from tables of before too, and two tables that both say it are asked about", () => {
    const stock: CellValue[][] = [
      ["Wax", 500, null, null],
      ["Tin", 10, null, null],
    ];
    expect(run({ stock }).shelf?.lacks).toMatchObject([{ item: "Wax", onHand: 500 }]);
    const both = run({ stock, items: [item("Wax", 5000)] });
    expect(both.shelf?.lacks).toEqual([]);
    expect(texts(both)).toContain(
      "warning: Wax: two tables say what is on hand; that of the first is taken. Keep it in one of them",
    );
  });
});

describe("what to buy", () => {
  it("counts deliveries in, one for all that comes from one supplier", () => {
    // Ten wicks are missing too. 2000 g of wax: 8 from North, or 9 from South, where the wicks are.
    const items = [
      item("Wax", 0, 2000, 8, null, null, "North", 4),
      item("Wax", 0, 1000, 4.5, null, null, "South", 4),
      item("Wick", 0, 10, 2, null, null, "south", 4),
      TIN,
    ];
    const made = run({ items, components: [["Tin", "Wick", 1]] });
    expect(made.shelf?.lacks.map(({ item, buy, cost }) => [item, buy, cost])).toEqual([
      ["Wax", [{ count: 2, size: 1000, supplier: "South" }], 9],
      ["Wick", [{ count: 1, size: 10, supplier: "south" }], 2],
    ]);
    expect(made.shelf?.deliveries).toEqual([{ supplier: "South", items: ["Wax", "Wick"], cost: 4 }]);
    expect(texts(made)).toContain("warning: Delivery of Wax, Wick from South costs 4.00 on top");
    expect(run({ items: [items[0] as CellValue[], items[1] as CellValue[], TIN] }).shelf?.lacks).toMatchObject([
      { buy: [{ count: 1, size: 2000, supplier: "North" }], cost: 8 },
    ]);
  });

  it("takes the highest delivery where the rows of one supplier say different ones, and asks about it", () => {
    const items = (first: number, second: number) => [
      item("Wax", 0, 2000, 8, null, null, "North", first),
      item("Wick", 0, 10, 2, null, null, "north ", second),
      TIN,
    ];
    const components: CellValue[][] = [["Tin", "Wick", 1]];
    const made = run({ items: items(4, 6), components });
    expect(made.shelf?.deliveries).toEqual([{ supplier: "North", items: ["Wax", "Wick"], cost: 6 }]);
    expect(made.problems).toContainEqual({
      ...{ table: "items", field: "delivery", severity: "warning" },
      text: "north: its rows say different deliveries; the highest is taken",
    });
    // One that is written in one row counts for the others, which leave it open.
    for (const [first, second] of [
      [4, 4],
      [4, 0],
      [0, 4],
    ] as const) {
      const same = run({ items: items(first, second), components });
      expect(same.shelf?.deliveries.map(({ cost }) => cost)).toEqual([4]);
      expect(texts(same).filter((text) => text.includes("different deliveries"))).toEqual([]);
    }
  });

  it("counts an order for each item where no supplier is named, and none where nothing is charged", () => {
    const charged = run({
      items: [item("Wax", 0, 2000, 8, null, null, null, 3), item("Tin", 0, 10, 5, null, null, null, 2)],
    });
    expect(charged.shelf?.deliveries).toEqual([
      { supplier: "", items: ["Wax"], cost: 3 },
      { supplier: "", items: ["Tin"], cost: 2 },
    ]);
    expect(texts(charged)).toContain("warning: Delivery of Wax costs 3.00 on top");
    expect(run({ items: [item("Wax", 0, 2000, 8, null, null, "North"), TIN] }).shelf?.deliveries).toEqual([]);
  });

  it("says of packs that cannot be chosen why, and chooses all others all the same", () => {
    const items = [item("Wax", 0, 1e-200, 1), item("Tin", 0, 10, 5)];
    const made = run({ items });
    expect(texts(made)).toEqual(["warning: Wax: sizes: too many packs to count; check the need and the sizes"]);
    expect(made.shelf?.lacks.map(({ item, buy, cost }) => [item, buy.length, cost])).toEqual([
      ["Wax", 0, undefined],
      ["Tin", 1, 5],
    ]);
  });

  it("says so where more suppliers charge for delivery than can be compared", () => {
    const rows = Array.from({ length: 13 }, (_, i) => item("Wax", 0, 1000 + i, 9, null, null, `Supplier ${i}`, 4));
    const made = run({ items: [...rows, TIN] });
    expect(texts(made).filter((text) => text.startsWith("warning: Delivery: "))).toEqual([
      "warning: Delivery: 13 suppliers are too many to compare; give fewer of them a delivery",
    ]);
    expect(made.shelf?.lacks).toMatchObject([{ item: "Wax", buy: [] }]);
  });

  it("says what falls below its reorder level, of what the run uses and of all else", () => {
    const items = [
      item("Wax", 2300, null, null, null, 500),
      item("Ribbon", 3, null, null, null, 20),
      item("Label", 30, null, null, null, 20),
      TIN,
    ];
    const made = run({ items });
    expect(made.shelf?.low.map(({ item, left }) => [item, left])).toEqual([
      ["Wax", 300],
      ["Ribbon", 3],
    ]);
    expect(texts(made)).toEqual(["warning: Time to reorder: Wax (300 g left, below 500 g), Ribbon (3 left, below 20)"]);
  });
});

describe("what a candle costs", () => {
  // 200 of wax a candle; the run takes 2000. Lot A: 1500 at 0.01, lot B: 1000 at 0.02.
  const moves: CellValue[][] = [
    [DAY - 20, "Wax", "A", 1500, 15],
    [DAY - 10, "Wax", "B", 1000, 20],
    [DAY - 20, "Tin", "T", 20, 30],
  ];
  const each = (stockPrice: Settings["stockPrice"], more: Partial<Settings> = {}, beside: Beside = { today: DAY }) =>
    run({ moves }, beside, { stockPrice, ...more }).costs?.kinds[0];

  it("is that of the lots in stock: the oldest first, all at their mean, or what was paid last", () => {
    // First in: 1500 x 0.01 + 500 x 0.02 = 25 for 2000. Average: 35 for 2500. Each candle 200 of it and a tin at 1.50.
    expect(each("first in")?.each).toBeCloseTo((200 * 25) / 2000 + 1.5, 12);
    expect(each("average")?.each).toBeCloseTo((200 * 35) / 2500 + 1.5, 12);
    expect(each("last paid")?.each).toBeCloseTo(200 * 0.02 + 1.5, 12);
  });

  it("holds labour at its rate, and the rejects that the log shows", () => {
    // Wax 2.50, the tin 1.50 and ten minutes at 18 an hour are 7; of 20 candles 19 are good and pay for all.
    const cost = each("first in", { labourMinutes: 10, labourRate: 18 }, { today: DAY, rejects: 0.05 });
    expect(cost?.parts).toMatchObject({ ingredients: expect.closeTo(2.5, 12), vessel: 1.5, components: 0, labour: 3 });
    expect(cost?.each).toBeCloseTo(7 / 0.95, 12);
    expect(cost?.parts.rejects).toBeCloseTo(7 / 0.95 - 7, 12);
    const title = (labourRate: number, rejects?: number) =>
      run({ moves }, { today: DAY, rejects }, { labourMinutes: 10, labourRate }).costs?.title;
    expect(title(0)).toBe("Cost of materials");
    expect(title(18)).toBe("Cost with labour");
    expect(title(18, 0.05)).toBe("Cost with labour and rejects");
  });

  it("takes the price of a pack where none is written, and the written one before it", () => {
    const of = (...wax: CellValue[]) =>
      run({ items: [item("Wax", 5000, ...wax), item("Tin", 10, null, null, 1)] }).costs?.kinds[0]?.each;
    expect(of(1000, 12, null)).toBeCloseTo(200 * 0.012 + 1, 12);
    expect(of(1000, 12, 0.01)).toBeCloseTo(200 * 0.01 + 1, 12);
  });

  it("asks about a unit price that is far from that of the packs", () => {
    const of = (unitPrice: number) =>
      texts(run({ items: [item("Wax", 5000, 1000, 12, unitPrice), item("Tin", 10, null, null, 1)] }));
    expect(of(12)).toEqual(["warning: Wax: the unit price is 12, and its packs make 0.012; check which one is meant"]);
    expect(of(0.02)).toEqual([]);
    expect(of(0.005)).toHaveLength(1);
  });

  it("counts no rejects where the log has no good candle, and says so", () => {
    const made = run({ moves }, { today: DAY, rejects: 1 });
    expect(made.costs?.kinds[0]?.each).toBeCloseTo(4, 12);
    expect(texts(made)).toEqual([
      "warning: No candle of the log came out good: the cost is what one costs to make, rejects not counted",
    ]);
  });

  it("is left out where a price lacks, by name, and says which lots nothing was written for", () => {
    const made = run({ moves: moves.slice(0, 2) });
    expect(made.costs).toBeUndefined();
    expect(texts(made)).toContain("warning: Tin has no price; the cost is left out");
    const gift: CellValue[][] = [...moves, [DAY - 30, "Wax", "G", 100]];
    expect(texts(run({ moves: gift }))).toEqual([
      "warning: Wax: nothing is written in Paid for lot G; it is taken at what was paid last",
    ]);
    expect(texts(run({ moves: [...moves, [DAY - 30, "Wax", null, 100]] }))).toEqual([
      "warning: Wax: nothing is written in Paid for what has no lot; it is taken at what was paid last",
    ]);
  });
});

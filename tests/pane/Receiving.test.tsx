// @vitest-environment happy-dom
import { describe, expect, it } from "vitest";
import type { Addition } from "../../src/sheet/addition";
import type { CellValue, Content } from "../../src/sheet/sheet";
import { FakeHost } from "./fakeHost";
import { openPane } from "./openPane";

const BATCH: CellValue[][] = [
  ["Vessel", "Quantity", "Fill weight (g)", "Scent"],
  ["Tin", 10, 100, "Cedar"],
];
const MOVES: CellValue[][] = [
  ["Date", "Item", "Lot", "Change (oz)", "Paid", "Best before"],
  [46_300, "Soy wax", "L-1", 100, 20, null],
];

class ShelfHost extends FakeHost {
  readonly appended: Addition[] = [];
  refusal: Error | undefined;
  override async append(additions: readonly Addition[]) {
    if (this.refusal) throw this.refusal;
    this.appended.push(...additions);
  }
}

const plainOf = (content: Content | null): unknown => content && Object.values(content)[0];

/** The rows of the one addition, by heading. */
function addedBy({ appended }: ShelfHost): Record<string, unknown>[] {
  const [one] = appended;
  if (!one || !("table" in one)) throw new Error("nothing was added to a table");
  return one.rows.map((row) => Object.fromEntries(row.map((cell, i) => [one.headings[i], plainOf(cell)])));
}

describe("receiving", () => {
  const { show, type, press, field, section, shown, beside, done, alert } = openPane("pane-receiving", "stock");
  const WAX = {
    Item: "soy wax",
    Lot: "L-2",
    Quantity: "2 x 5",
    Unit: "kg",
    "Paid for all of it": "80",
    "Best before": "2027-11-01",
  };

  it("shows the row as it is typed, and adds it by one press, in the unit of the table", async () => {
    const host = new ShelfHost({ Batch: BATCH, Moves: MOVES });
    await show(host);
    expect(shown()).toEqual([]);
    await type(WAX);
    expect(shown()).toEqual(["Soy wax, lot L-2: +10 kg, paid 80, best before 2027-11-01"]);
    await press("Add to moves");
    // 10000 g / 28.349523125 g of an ounce.
    expect(addedBy(host)).toEqual([
      {
        Date: 46_352,
        Item: "Soy wax",
        Lot: "L-2",
        "Change (oz)": expect.closeTo(10_000 / 28.349523125, 8),
        Paid: 80,
        "Best before": 46_692,
      },
    ]);
    expect(done()).toBe("Soy wax, lot L-2: +10 kg, paid 80, best before 2027-11-01 is in Moves now.");
    // Ready for the next pack, of the same day and unit.
    expect([field("Item").value, field("Unit").value, field("Received").value]).toEqual(["", "kg", "2026-11-26"]);
  });

  it("asks about a lot that came in before, a name that no table knows, and what is counted elsewhere", async () => {
    const host = new ShelfHost({ Batch: BATCH, Moves: MOVES });
    await show(host);
    await type({ ...WAX, Lot: "l-1" });
    // 46300 is 2026-10-05: 52 days before 2026-11-26.
    expect(shown().slice(1)).toEqual(["lot L-1 of Soy wax came in before, on 2026-10-05: is this more of it?"]);
    await type({ Item: "Soya", Lot: "L-3" });
    expect(shown().slice(1)).toEqual(["Soya stands in no other table: is it spelt as there, or new?"]);
    await type({ Item: "Tin", Lot: "", "Best before": "2026-11-01" });
    expect(shown().slice(1)).toEqual([
      "no lot is written: what it goes into cannot be traced",
      "Tin is counted in the other tables: is 10 kg right?",
      "its best before was over when it came in",
    ]);
    await press("Add anyway");
    expect(addedBy(host)).toHaveLength(1);
  });

  it("knows the wick of a vessel by its name", async () => {
    const vessels: CellValue[][] = [
      ["Vessel", "Water weight (g)", "Wick"],
      ["Tin", 125, "2 x W-21"],
    ];
    await show(new ShelfHost({ Batch: BATCH, Moves: MOVES, Vessels: vessels }));
    await type({ Item: "w-21", Lot: "K-1", Quantity: "100", Unit: "pieces" });
    expect(shown()).toEqual(["W-21, lot K-1: +100 pieces"]);
  });

  it("counts at first what is counted elsewhere, by the tables or the kind of an item, until a unit is chosen", async () => {
    const items: CellValue[][] = [
      ["Item", "Kind"],
      ["Lid", "lid"],
      ["Red", "dye"],
    ];
    const host = new ShelfHost({ Batch: BATCH, Moves: MOVES, Items: items });
    await show(host);
    for (const [item, unit] of [
      ["tin", "pieces"],
      ["Lid", "pieces"],
      ["Red", "g"],
      ["Cedar", "g"],
    ] as const) {
      await type({ Item: item });
      expect(field("Unit").value, item).toBe(unit);
    }
    await type({ Unit: "oz", Item: "Tin" });
    expect(field("Unit").value).toBe("oz");
  });

  it("asks about a quantity that may be of another unit, too much of it and too little", async () => {
    const items: CellValue[][] = [
      ["Item", "Pack size (g)", "Pack price", "On hand (g)"],
      ["Cedar", 250, 20, null],
      ["Red", null, null, 50],
      ["Tin", null, null, 400],
    ];
    await show(new ShelfHost({ Batch: BATCH, Moves: MOVES, Items: items }));
    // 100 oz came in before: 100 kg are 3527 oz, 2 g are 0.07 oz.
    for (const [item, quantity, unit, doubt] of [
      [
        "Soy wax",
        "100",
        "kg",
        "100 kg is far more than has come in before, at most 100 oz: check the quantity and the unit",
      ],
      [
        "Soy wax",
        "2",
        "g",
        "2 g is far less than has come in before, at least 100 oz: check the quantity and the unit",
      ],
      ["Soy wax", "25", "kg", undefined],
      // 250 g are 8.81849 oz.
      [
        "Cedar",
        "100",
        "kg",
        "100 kg is far more than a pack holds, at most 8.81849 oz: check the quantity and the unit",
      ],
      ["Cedar", "1", "kg", undefined],
      // 50 g are 1.7637 oz.
      ["Red", "100", "kg", "100 kg is far more than is on hand, at most 1.7637 oz: check the quantity and the unit"],
      ["Red", "1", "kg", undefined],
      ["Tin", "3", "pieces", "3 pieces is far less than is on hand, at least 400: check the quantity and the unit"],
    ] as const) {
      await type({ Item: item, Lot: "N-1", Quantity: quantity, Unit: unit });
      const doubts = shown().filter((line) => line.includes("far "));
      expect(doubts, `${quantity} ${unit} of ${item}`).toEqual(doubt === undefined ? [] : [doubt]);
    }
  });

  it("puts what On hand says into the moves first, where they have nothing of it", async () => {
    const items: CellValue[][] = [
      ["Item", "Kind", "On hand (g)"],
      ["Red", "dye", 50],
      ["Soy wax", "wax", 900],
    ];
    const host = new ShelfHost({
      Batch: BATCH,
      Moves: [[...(MOVES[0] ?? []), "Note"], ...MOVES.slice(1)],
      Items: items,
    });
    await show(host);
    await type({ ...WAX, Item: "red", Quantity: "100", Unit: "g" });
    expect(shown()).toEqual([
      // 50 g are 1.76370 oz.
      "Red: +1.7637 oz, what On hand says",
      "Red, lot L-2: +100 g, paid 80, best before 2027-11-01",
      "the first row is what stands in On hand: from now on the moves say what is on hand, and On hand does not count. Is what came in part of it already? Then take it off there first",
    ]);
    await press("Add anyway");
    expect(addedBy(host).map((row) => [row.Item, row["Change (oz)"], row.Note])).toEqual([
      ["Red", expect.closeTo(50 / 28.349523125, 8), "carried over from On hand"],
      ["Red", expect.closeTo(100 / 28.349523125, 8), null],
    ]);
    // Of what has moves nothing is carried over.
    await type(WAX);
    expect(shown()).toEqual(["Soy wax, lot L-2: +10 kg, paid 80, best before 2027-11-01"]);
  });

  it("asks about the unit of the pack before where nothing else tells how much is usual", async () => {
    await show(new ShelfHost({ Batch: BATCH, Moves: MOVES }));
    await type(WAX);
    await press("Add to moves");
    await type({ Item: "Cedar", Lot: "C-1", Quantity: "100" });
    expect(shown().slice(1)).toEqual(["the unit is still kg, as of what was added before: is 100 kg right?"]);
    await type({ Unit: "g" });
    expect(shown()).toEqual(["Cedar, lot C-1: +100 g"]);
  });

  it("says beside a field what is wrong, what is missing only at the press, and adds nothing", async () => {
    const host = new ShelfHost({ Batch: BATCH, Moves: MOVES });
    await show(host);
    await type({ Quantity: "lots" });
    expect(beside("Quantity")).toBe('"lots" is not a number');
    expect(beside("Item")).toBeUndefined();
    await press("Add to moves");
    expect(beside("Item")).toBe("write what came in");
    expect(host.appended).toEqual([]);
  });

  it("begins a table of moves where there is none, and keeps what was typed when the spreadsheet refuses", async () => {
    const host = new ShelfHost({ Batch: BATCH });
    await show(host);
    await type(WAX);
    host.refusal = new Error("Excel is busy. Try again.");
    expect(section().textContent).toContain("Moves, a new table, with:");
    await press("Add anyway");
    expect(alert()).toBe("Excel is busy. Try again.");
    expect(field("Lot").value).toBe("L-2");
    host.refusal = undefined;
    await press("Add anyway");
    expect(host.appended[0]).toMatchObject({ name: "Moves", tables: [{ name: "Moves", rows: 1 }] });
  });

  it("adds nothing that was not shown: a lot that came in meanwhile is asked about first", async () => {
    const host = new ShelfHost({ Batch: BATCH, Moves: MOVES });
    await show(host);
    await type(WAX);
    host.all.Moves = [...MOVES, [46_352, "Soy wax", "L-2", 5, null, null]];
    await press("Add to moves");
    expect(host.appended).toEqual([]);
    expect(done()).toMatch(/^The tables have changed/);
    expect(shown().at(-1)).toMatch(/^lot L-2 of Soy wax came in before/);
  });

  it("adds nothing to a table whose changes are no weight, and says why", async () => {
    const host = new ShelfHost({
      Moves: MOVES.map((row) => row.map((cell) => (cell === "Change (oz)" ? "Change (ml)" : cell))),
    });
    await show(host);
    await type(WAX);
    expect(section().textContent).toMatch(/Nothing can be added to Moves: The heading Change \(ml\) says/);
    expect(shown()).toEqual([]);
    await press("Add to moves");
    expect(host.appended).toEqual([]);
  });
});

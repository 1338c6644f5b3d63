import { describe, expect, it } from "vitest";
import { pourMoves } from "../../../src/runsheet/record/pourMoves";
import type { WeightUnit } from "../../../src/runsheet/settings";
import type { Components } from "../../../src/runsheet/tables/components";
import type { Items } from "../../../src/runsheet/tables/items";
import type { Moves } from "../../../src/runsheet/tables/moves";
import { readTable } from "../../../src/runsheet/tables/readTables";
import type { Vessels } from "../../../src/runsheet/tables/vessels";
import type { CellValue } from "../../../src/sheet/sheet";
import { pouredRun, readVessels, vesselsOf } from "./poured";

const DAY = 46_300;

/** Moves of an item: lot, change, and the day where it is another one. All is invented. */
function movesOf(rows: [item: string, lot: string, change: CellValue, day?: number][], unit = "g"): Moves {
  const table = {
    type: "moves" as const,
    headings: ["Date", "Item", "Lot", `Change (${unit})`],
    rows: rows.map(([item, lot, change, day = DAY]) => [day, item, lot, change]),
    columns: { date: 0, item: 1, lot: 2, change: 3 },
  };
  return readTable(table, "g" satisfies WeightUnit) as Moves;
}

const none: Components = new Map();
const run = (lots: { wax?: string; scent?: string } = {}) =>
  pouredRun([
    {
      parts: [
        { planned: 1000, actual: 990, lot: lots.wax ?? "" },
        { sort: "scent", label: "Scent: Cedar", planned: 30, actual: 31, lot: lots.scent ?? "" },
      ],
      lines: [{ count: 10, good: 9 }],
    },
  ]);
const usedOf = (
  moves: Moves,
  lots: Parameters<typeof run>[0] = {},
  components = none,
  vessels: Vessels = new Map(),
) => {
  const { used, says } = pourMoves(run(lots), { moves, components, vessels });
  return { used: used.map(({ item, lot, written }) => [item, lot, written]), says };
};

describe("what a pour took", () => {
  it("is of the lots that the list of what to fetch names: vessel, wick and component", () => {
    const moves = movesOf([
      ["Tin", "T-1", 40],
      ["Tin", "T-2", 40],
      ["W-21", "X-1", 100],
      ["W-21", "X-2", 100],
      ["Box", "B-1", 100],
      ["Box", "B-2", 100],
    ]);
    const lots = new Map([
      ["vessel tin", "T-2"],
      ["wick w-21", "x-2"],
      ["component box", "B-2"],
    ]);
    const { used, says } = pourMoves(pouredRun([{ parts: [] }], { lots }), {
      moves,
      components: new Map([["tin", [{ vessel: "Tin", item: "Box", each: 1, wrong: [] }]]]),
      vessels: vesselsOf(["Tin", 125, 0.86, "2 x W-21"]),
    });
    // 10 tins of two wicks each.
    expect(used.map(({ item, lot, written }) => [item, lot, written])).toEqual([
      ["Tin", "T-2", 10],
      ["W-21", "X-2", 20],
      ["Box", "B-2", 10],
    ]);
    expect(says).toEqual([]);
  });

  it("is each ingredient as weighed, by the lot that was written, and vessels and components, spoilt ones too", () => {
    const moves = movesOf([
      ["Wax", "W-1", 5000],
      ["Cedar", "C-1", 500],
      ["Tin", "T-1", 40],
      ["Wick", "K-1", 100],
    ]);
    const components: Components = new Map([
      [
        "tin",
        [
          { vessel: "Tin", item: "Wick", each: 2, wrong: [] },
          { vessel: "Tin", item: "Box", each: 0.25, wrong: [] },
        ],
      ],
    ]);
    expect(usedOf(moves, { wax: "w-1", scent: "C-1" }, components)).toEqual({
      used: [
        ["Wax", "W-1", 990],
        ["Cedar", "C-1", 31],
        ["Tin", "T-1", 10],
        ["Wick", "K-1", 20],
        // 10 x 0.25 = 2.5: the third box is begun.
        ["Box", "", 3],
      ],
      says: [
        "no lot written for Tin: the oldest, T-1, is taken",
        "no lot written for Wick: the oldest, K-1, is taken",
        "Box: nothing is on hand by the moves, so its row has no lot",
      ],
    });
  });

  it("says which row has a lot that was taken for a day, unless a move knows it so", () => {
    // 46352 is 2026-11-26: a lot 11-26 as the spreadsheet keeps it.
    const day = 46_352;
    const parts = [{ planned: 9, actual: 9, lot: String(day) }];
    const poured = pouredRun([{ parts, lines: [] }], { lotDays: [{ row: 10, day }] });
    const says = (lot: string) =>
      pourMoves(poured, { moves: movesOf([["Wax", lot, 50]]), components: none, vessels: new Map() }).says;
    expect(says("11-26")[0]).toBe(
      "Row 10: a lot stands there as the day 2026-11-26. If it was written like 11-26, type it again with ' before it, and it stays as it is written",
    );
    expect(says(String(day))).toEqual([]);
  });

  it("is the approved wick of a vessel too, unless the components count it", () => {
    const vessels = readVessels({
      type: "vessels",
      headings: [],
      rows: [["Tin", 120, "2 x W-7"]],
      columns: { vessel: 0, water: 1, wick: 2 },
    });
    const counted = (components: Components) => usedOf(movesOf([]), {}, components, vessels).used.slice(2);
    const [tin, wick] = [
      ["Tin", "", 10],
      ["W-7", "", 20],
    ];
    expect(counted(none)).toEqual([tin, wick]);
    expect(counted(new Map([["tin", [{ vessel: "Tin", item: "Wick W-7", each: 1, wrong: [] }]]]))).toEqual([
      tin,
      ["Wick W-7", "", 10],
    ]);
  });

  it("is of the lot beside the one row of a wick that is a component of another vessel, too", () => {
    const run = pouredRun([{ parts: [] }], { lots: new Map([["wick w-7", "X-2"]]) });
    const components: Components = new Map([["tin", [{ vessel: "Tin", item: "W-7", each: 1, wrong: [] }]]]);
    const { used } = pourMoves(run, { moves: movesOf([]), components, vessels: new Map() });
    expect(used.map(({ item, lot, quantity }) => [item, lot, quantity])).toEqual([
      ["Tin", "", 10],
      ["W-7", "X-2", 10],
    ]);
  });

  it("is the oldest lots where none is written, one after the other, and what no lot has is said", () => {
    const moves = movesOf([
      ["Wax", "W-2", 400, DAY + 5],
      ["Wax", "W-1", 300, DAY],
      ["Wax", "W-0", 100, DAY - 9],
      ["Wax", "W-0", -100, DAY - 8],
    ]);
    const { used, says } = usedOf(moves, { scent: "C-9" });
    expect(used.slice(0, 3)).toEqual([
      ["Wax", "W-1", 300],
      ["Wax", "W-2", 400],
      ["Wax", "", 290],
    ]);
    expect(says).toEqual([
      "Cedar: lot C-9 is written, and no move says that it came in",
      "no lot written for Wax: the oldest, W-1, then W-2, are taken",
      "Wax: the moves have less on hand than was used, so the rest has no lot",
      "Tin: nothing is on hand by the moves, so its row has no lot",
    ]);
  });

  it("leaves to the oldest only what the lots written in other pots have not taken", () => {
    const moves = movesOf([
      ["Wax", "W-1", 1000],
      ["Wax", "W-2", 5000, DAY + 1],
    ]);
    const part = (lot: string) => ({ parts: [{ planned: 800, actual: 800, lot }], lines: [] });
    const { used } = pourMoves(pouredRun([part("W-1"), part("")]), { moves, components: none, vessels: new Map() });
    expect(used.map(({ lot, quantity }) => [lot, quantity])).toEqual([
      ["W-1", 1000],
      ["W-2", 600],
    ]);
  });

  it("takes two lots in one cell in turn where both are known, else the text as it is", () => {
    const moves = movesOf([
      ["Wax", "W-1", 300],
      ["Wax", "W-2", 5000],
      ["Wax", "7/26", 5000],
    ]);
    expect(usedOf(moves, { wax: "W-1 and W-2" }).used.slice(0, 2)).toEqual([
      ["Wax", "W-1", 300],
      ["Wax", "W-2", 690],
    ]);
    expect(usedOf(moves, { wax: "7/26" }).used[0]).toEqual(["Wax", "7/26", 990]);
    const unknown = usedOf(moves, { wax: "W-1, X" });
    expect(unknown.used[0]).toEqual(["Wax", "W-1, X", 990]);
    expect(unknown.says[0]).toBe(
      "Wax: W-1, X is taken for one lot, for no move says that X came in. If these are several, first write down under Receiving what came in of each",
    );
    expect(usedOf(moves, { wax: "S-1, S-2" }).says[0]).toContain("for no move says that S-1 and S-2 came in");
  });

  describe("of more of a lot than it holds", () => {
    const asksOf = (moves: Moves, lots: Parameters<typeof run>[0], made = run(lots)) =>
      pourMoves(made, { moves, components: none, vessels: new Map() }).asks;
    const TWO: Parameters<typeof movesOf>[0] = [
      ["Wax", "W-1", 600],
      ["Wax", "W-2", 2000],
    ];

    it("is asked about, with how much it holds and what to write", () => {
      expect(asksOf(movesOf(TWO), { wax: "w-1" })).toEqual([
        'Wax: 990 g of lot W-1 would be taken, and by the moves only 600 g is left of it. Did another lot go in too? Then write both in the cell, such as "W-1, W-2": the first is taken as far as it goes. Else write down under Receiving what else came in of it',
      ]);
      // What it says to write is asked about no more.
      expect(asksOf(movesOf(TWO), { wax: "W-1, W-2" })).toEqual([]);
      expect(asksOf(movesOf(TWO), { wax: "W-2" })).toEqual([]);
      // 600 of one and 390 of the other, which has less.
      expect(asksOf(movesOf([TWO[0] as never, ["Wax", "W-2", 200]]), { wax: "W-1, W-2" })[0]).toMatch(
        /^Wax: 390 g of lot W-2 would be taken, and by the moves only 200 g is left of it\./,
      );
    });

    it("is asked about where there is no other lot, and where nothing is left of it", () => {
      const gone = movesOf([
        ["Wax", "W-1", 600],
        ["Wax", "W-1", -700],
      ]);
      expect(asksOf(gone, { wax: "W-1" })).toEqual([
        "Wax: 990 g of lot W-1 would be taken, and by the moves nothing is left of it. Write down under Receiving what else came in of it",
      ]);
    });

    it("counts all pots together, and what is counted by number", () => {
      const part = { parts: [{ planned: 800, actual: 800, lot: "W-1" }], lines: [{ count: 10 }] };
      const two = pouredRun([part, part], { lots: new Map([["vessel tin", "T-1"]]) });
      const moves = movesOf([
        ["Wax", "W-1", 1599.5],
        ["Tin", "T-1", 19],
      ]);
      const asks = asksOf(moves, {}, two);
      expect(asks.map((one) => one.split(". ")[0])).toEqual([
        "Wax: 1600 g of lot W-1 would be taken, and by the moves only 1599.5 g is left of it",
        "Tin: 20 of lot T-1 would be taken, and by the moves only 19 is left of it",
      ]);
      const enough = movesOf([
        ["Wax", "W-1", 1600],
        ["Tin", "T-1", 20],
      ]);
      expect(asksOf(enough, {}, two)).toEqual([]);
    });

    it("is in the unit of the run where the moves are in another one", () => {
      // 30 oz are 850.5 g of 28.349523125 each.
      expect(asksOf(movesOf([["Wax", "W-1", 30]], "oz"), { wax: "W-1" })[0]).toMatch(/only 850\.\d* g is left/);
      // And 35 oz are 992 g.
      expect(asksOf(movesOf([["Wax", "W-1", 35]], "oz"), { wax: "W-1" })).toEqual([]);
    });

    it("is not asked about where the moves cannot be added up, or do not know the lot: that is said", () => {
      expect(
        asksOf(
          movesOf([
            ["Wax", "W-1", 5],
            ["Wax", "W-1", "a lot"],
          ]),
          { wax: "W-1" },
        ),
      ).toEqual([]);
      expect(asksOf(movesOf(TWO), { wax: "W-9" })).toEqual([]);
    });
  });

  it("begins with what On hand says of what has no move yet", () => {
    const headings = ["Item", "Kind", "On hand (kg)"];
    const rows = [
      ["Wax", "wax", 12.5],
      ["Cedar", "scent", 9],
      ["Tin", "tin", 30],
      ["Jar", "jar", 30],
    ];
    const columns = { item: 0, kind: 1, onHand: 2 };
    const items = readTable({ type: "items" as const, headings, rows, columns }, "g") as Items;
    const moves = movesOf([["Cedar", "C-1", 50]], "oz");
    const made = pourMoves(run(), { moves, items, components: none, vessels: new Map() });
    // 12500 g / 28.349523125 g of an ounce = 440.924524...; what this pour does not take stays where it is.
    expect(made.openings).toEqual([
      { item: "Wax", use: "weight", change: expect.closeTo(12_500 / 28.349523125, 8) },
      { item: "Tin", use: "count", change: 30 },
    ]);
    expect(made.used.map(({ item, lot, quantity }) => [item, lot, quantity])).toEqual([
      ["Wax", "", expect.closeTo(990, 4)],
      ["Cedar", "C-1", expect.closeTo(31, 4)],
      ["Tin", "", 10],
    ]);
    expect(made.says).toEqual(["no lot written for Cedar: the oldest, C-1, is taken"]);
  });

  it("says of what it cannot carry over that On hand cannot be read", () => {
    const rows = [["Wax", "two bags"]];
    const table = { type: "items" as const, headings: ["Item", "On hand"], rows, columns: { item: 0, onHand: 1 } };
    const items = readTable(table, "g") as Items;
    const made = pourMoves(run(), { moves: movesOf([]), items, components: none, vessels: new Map() });
    expect(made.openings).toEqual([]);
    expect(made.says[0]).toBe(
      "Wax: what stands in On hand cannot be read, so it is not carried over into the moves; fix it first",
    );
  });

  it("is written as the table counts it", () => {
    // 990 g / 28.349523125 g of an ounce = 34.921221...
    const { used } = usedOf(movesOf([["Wax", "W-1", 100]], "oz"));
    expect(used[0]).toEqual(["Wax", "W-1", expect.closeTo(990 / 28.349523125, 5)]);
    expect(usedOf(movesOf([["Tin", "T-1", 40]], "oz")).used.at(-1)).toEqual(["Tin", "T-1", 10]);
  });

  it("names no lot of an item whose moves cannot be added up, and says what was not weighed", () => {
    const moves = movesOf([["Wax", "W-1", "a lot"]]);
    const part = { planned: 800, actual: undefined, lot: "" };
    const { used, says } = pourMoves(pouredRun([{ parts: [part], lines: [] }]), {
      moves,
      components: none,
      vessels: new Map(),
    });
    expect(used.map(({ item, lot, written }) => [item, lot, written])).toEqual([["Wax", "", 800]]);
    expect(says[0]).toBe("Row 10: no actual weight of Wax, so it is counted as planned");
    expect(says[1]).toMatch(/^Wax: its moves cannot be added up, so no lot is taken: .*"a lot" is not a number/);
  });
});

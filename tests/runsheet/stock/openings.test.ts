import { describe, expect, it } from "vitest";
import { asMoves, CARRIED, isCarried, isInMoves, openingsOf } from "../../../src/runsheet/stock/openings";
import { readTable } from "../../../src/runsheet/tables/readTables";
import { matchColumns } from "../../../src/runsheet/tables/registry";
import type { CellValue } from "../../../src/sheet/sheet";
import { DAY, movesOf } from "./moved";

function itemsOf(...rows: CellValue[][]) {
  const headings = ["Item", "On hand (g)"];
  return readTable({ type: "items", headings, rows, columns: matchColumns("items", headings) }, "g") ?? new Map();
}
/** Half a kilogram of wax and twelve tins, invented. */
const ITEMS = itemsOf(["Soft wax", 500], ["Tin", 12], ["Lid", null], ["Oil", "a little"], ["Dye", 0]);
const take = (item: string, use: "weight" | "count" = "weight") => ({ item, use });

describe("what On hand says, when an item is moved for the first time", () => {
  it("is carried over once, spelt as in its table and counted as the moves count", () => {
    const { openings, says } = openingsOf(
      [take("soft WAX"), take("Soft wax"), take("Tin", "count")],
      ITEMS,
      movesOf([], "g", "kg"),
    );
    expect(openings).toEqual([
      { item: "Soft wax", use: "weight", change: 0.5 },
      { item: "Tin", use: "count", change: 12 },
    ]);
    expect(says).toEqual([]);
  });

  it("is not, where moves are there, nothing is written or nothing is there, and where it cannot be read is said", () => {
    const moves = movesOf([[DAY, "SOFT wax", "A", -5]]);
    const taken = [take("Soft wax"), take("Lid", "count"), take("Dye"), take("Moss"), take("Oil")];
    expect(openingsOf(taken, ITEMS, moves)).toEqual({
      openings: [],
      says: [expect.stringMatching(/^Oil: what stands in On hand cannot be read, so it is not carried over/)],
    });
    // A row that cannot be read is a move all the same.
    expect(openingsOf([take("Soft wax")], ITEMS, movesOf([[DAY, "Soft wax", "A", "five"]])).openings).toEqual([]);
  });

  it("is not where one pour takes the item by weight and by number, of which it can be but one, and that is said", () => {
    const taken = [take("Tin"), take("Soft wax"), take("tin", "count"), take("Lid"), take("Lid", "count")];
    expect(openingsOf(taken, ITEMS, movesOf([]))).toEqual({
      openings: [{ item: "Soft wax", use: "weight", change: 500 }],
      says: [
        "tin is taken by weight and by number here, and On hand is one number: it is not carried over into the moves. Give what is counted a name of its own first",
      ],
    });
  });

  it("comes before all other moves, by weight and by number, with a note that says where it is from", () => {
    const [wax, tins] = asMoves(
      [
        { item: "Soft wax", use: "weight", change: 0.5 },
        { item: "Tin", use: "count", change: 12 },
      ],
      DAY,
      1000,
    );
    expect(wax).toMatchObject({
      row: -2,
      date: DAY,
      lot: "",
      run: "",
      change: { count: 0.5, weight: 500 },
      note: CARRIED,
    });
    expect(tins).toMatchObject({ row: -1, change: { count: 12, weight: 12 } });
    expect([isCarried({ note: `${CARRIED}, split` }), isCarried({ note: "bought" })]).toEqual([true, false]);
  });
});

describe("whether it is in the moves already", () => {
  const isIn = (onHand: number, ...rows: CellValue[][]) => isInMoves(onHand, "Soft wax", "weight", movesOf(rows).rows);
  it("is a row of as much that names neither lot, price nor run", () => {
    expect(isIn(500, [DAY, "soft wax", null, 500])).toBe(true);
    expect(isIn(500, [DAY, "Hard wax", null, 500])).toBe(false);
    expect(isIn(500, [DAY, "Soft wax", "A", 500])).toBe(false);
    expect(isIn(500, [DAY, "Soft wax", null, 500, 12])).toBe(false);
    expect(isIn(500, [DAY, "Soft wax", null, 500, null, null, "2026-330-01"])).toBe(false);
    expect(isIn(500, [DAY, "Soft wax", null, 499])).toBe(false);
  });

  it("is rows that say so in their notes, which may have been split by lots", () => {
    const note = (lot: string, change: number, item = "Soft wax") => [
      DAY,
      item,
      lot,
      change,
      null,
      null,
      null,
      CARRIED,
    ];
    expect(isIn(500, note("A", 200), note("B", 300))).toBe(true);
    expect(isIn(500, note("A", 200), note("B", 300, "Hard wax"))).toBe(false);
    // What conversion leaves behind is no difference.
    expect(isIn(500, note("A", 499.9999))).toBe(true);
    expect([isIn(0), isIn(5)]).toEqual([true, false]);
  });
});

import { describe, expect, it } from "vitest";
import { isError } from "../../../src/runsheet/problem";
import { sameName } from "../../../src/runsheet/sameName";
import type { WeightUnit } from "../../../src/runsheet/settings";
import { moveColumns } from "../../../src/runsheet/tables/moves";
import { readTable, readTables } from "../../../src/runsheet/tables/readTables";
import { matchColumns } from "../../../src/runsheet/tables/registry";
import type { TableRows } from "../../../src/runsheet/tables/tableRows";
import type { CellValue } from "../../../src/sheet/sheet";

const HEADINGS = ["Date", "Item", "Lot", "Change (g)", "Paid", "Best before", "Run", "Note"];
const tableOf = (headings: readonly string[], ...rows: CellValue[][]): TableRows<"moves"> => ({
  type: "moves",
  headings,
  rows,
  columns: matchColumns("moves", headings),
});
const read = (table: TableRows<"moves">, unit: WeightUnit = "g") => {
  const moves = readTable(table, unit);
  if (!moves) throw new Error("no table");
  return moves;
};
/** What is said of Soy wax in a table of this one row, and whether it is an error. */
const said = (...row: CellValue[]) =>
  (read(tableOf(HEADINGS, row)).said.get(sameName("Soy wax")) ?? []).map(
    (one) => `${isError(one) ? "fix" : "check"} ${one.field} ${one.text}`,
  );

// Days as spreadsheets count them: LibreOffice 7.4 makes 46352 of DATE(2026,11,26).
const DAY = 46352;

describe("the table of moves", () => {
  it("gives each row with its day, lot, change, money, best before, run and note", () => {
    const rows: CellValue[][] = [
      [DAY, "Soy wax", "W-17", 22680, 91.5, DAY + 365, null, "two boxes"],
      [DAY + 1.75, "Soy wax", 170000123456789, -1234.5, null, null, "2026-331-01", null],
      [null, null, null, null, null, null, null, null],
      ["2026-11-28", "Amber jar", null, 48, 0, null, null, null],
    ];
    expect(read(tableOf(HEADINGS, ...rows))).toEqual({
      rows: [
        {
          row: 0,
          date: DAY,
          item: "Soy wax",
          lot: "W-17",
          change: { count: 22680, weight: 22680 },
          paid: 91.5,
          bestBefore: DAY + 365,
          run: "",
          note: "two boxes",
        },
        {
          row: 1,
          date: DAY + 1,
          item: "Soy wax",
          lot: "170000123456789",
          change: { count: -1234.5, weight: -1234.5 },
          paid: undefined,
          bestBefore: undefined,
          run: "2026-331-01",
          note: "",
        },
        {
          row: 3,
          date: DAY + 2,
          item: "Amber jar",
          lot: "",
          change: { count: 48, weight: 48 },
          paid: 0,
          bestBefore: undefined,
          run: "",
          note: "",
        },
      ],
      unit: "g",
      ratio: 1,
      said: new Map(),
      saidOfAll: { weight: [], count: [] },
    });
  });

  it("counts by the numbers of the table and weighs by the unit of its heading", () => {
    const { rows, unit, ratio } = read(tableOf(["Date", "Item", "Lot", "Qty in/out (lb)"], [DAY, "Soy wax", "A", 10]));
    // One pound is 453.59237 g: Weights and Measures Act 1985 (UK), Sch. 1 Part V.
    expect([unit, ratio]).toEqual(["lb", 453.59237]);
    expect(rows[0]?.change).toEqual({ count: 10, weight: 4535.9237 });
    expect(
      read(tableOf(["Date", "Item", "Lot", "Change (g)"], [DAY, "Soy wax", "A", 10]), "kg").rows[0]?.change,
    ).toEqual({ count: 10, weight: 0.01 });
  });

  it.each<[CellValue[], string[]]>([
    [
      [DAY, "Soy wax", "A", null],
      ["fix change Change: the cell is blank; write how much of Soy wax came in (+) or went out (-)"],
    ],
    [
      [DAY, "Soy wax", "A", "-200 g"],
      ['fix change Change: "-200 g" is text: write -200; the unit stands in the heading'],
    ],
    [[DAY, "Soy wax", "A", { error: "#N/A" }], ["fix change Change: the cell shows #N/A; fix it first"]],
    [[null, "Soy wax", "A", 5], ["fix date Date: the cell is blank; write the day, such as 2026-11-26"]],
    [["26/11/26", "Soy wax", "A", 5], ['fix date Date: "26/11/26" is not a date; write one such as 2026-11-26']],
    [["2026-02-30", "Soy wax", "A", 5], ['fix date Date: "2026-02-30" is not a date; write one such as 2026-11-26']],
    [[2026, "Soy wax", "A", -5], []],
    [
      [12, "Soy wax", "A", 5],
      ["fix date Date: 12 is no date from 1 March 1900 to the year 9999; write a date such as 2026-11-26"],
    ],
    [[DAY, "Soy wax", { error: "#REF!" }, 5], ["fix lot Lot: the cell shows #REF!; fix it first"]],
    [[DAY, "Soy wax", "A", 5, "12 EUR"], ['check paid Paid: "12 EUR" is text: write 12, without the currency']],
    [[DAY, "Soy wax", "A", 5, -1], ["check paid Paid: -1 is below 0; write 0 or more"]],
    [
      [DAY, "Soy wax", "A", 5, null, "spring"],
      ['check bestBefore Best before: "spring" is not a date; write one such as 2026-11-26'],
    ],
    [
      [DAY, "Soy wax", "A", -5, 3],
      ["check paid Soy wax: what was paid counts beside what came in, and not beside a use"],
    ],
  ])("of %j says what to do", (row, texts) => {
    expect(said(...row)).toEqual(texts);
  });

  it("keeps a row whose day cannot be read, and none whose change cannot", () => {
    const { rows } = read(tableOf(HEADINGS, ["soon", "Soy wax", "A", 5], [DAY, "Soy wax", "A", "many"]));
    expect(rows.map(({ row, date, change }) => [row, date, change.count])).toEqual([[0, undefined, 5]]);
  });

  it("names rows without an item, and says nothing of free ones", () => {
    const pour = { type: "pour", headings: [], rows: [], columns: {} } as const;
    const moves = tableOf(HEADINGS, [DAY, null, "A-1", 5], [DAY, " ", null, 5], [DAY, null, null, null]);
    expect(readTables({ pour, moves }, "g").doubts.map(({ row, text }) => `${row} ${text}`)).toEqual([
      "0 Item: the cell is blank, so the row counts for nothing; write what lot A-1 is of",
      "1 Item: the cell is blank, so the row counts for nothing; write what came in or went out",
    ]);
  });

  it("asks about lots that may have been taken for a day, once for all their rows", () => {
    const pour = { type: "pour", headings: [], rows: [], columns: {} } as const;
    // A lot 11-26 that was typed in 2026 stands there as DAY.
    const lots: CellValue[] = [DAY, "11-26", 4711, DAY + 0.5, String(DAY), DAY + 30];
    const moves = tableOf(HEADINGS, ...lots.map((lot): CellValue[] => [DAY, "Wax", lot, 5]));
    const { doubts } = readTables({ pour, moves }, "g");
    expect(doubts.map(({ row, field }) => [row, field])).toEqual([
      [0, "lot"],
      [5, "lot"],
    ]);
    expect(new Set(doubts.map(({ text }) => text))).toEqual(
      new Set([
        "Lot: a number that is a day of the calendar. Was the lot written like 11-26, and taken for a day? Then, and where it is a number, type it again with ' before it, and it stays as it is written",
      ]),
    );
  });

  it.each([
    [
      "Change (ml)",
      ["fix The heading Change (ml) says ml, a volume and not a weight; weigh it, or use POUR.FILLBYVOLUME"],
    ],
    ["Qty in", ["fix The heading Qty in says in, a length and not a weight; choose another column"]],
    ["Change (bags)", []],
  ])("says of a column %s that it is neither weight nor number", (heading, ofCounts) => {
    const { saidOfAll } = read(tableOf(["Date", "Item", "Lot", heading], [DAY, "Soy wax", "A", 5]));
    expect(saidOfAll.count.map((one) => `${isError(one) ? "fix" : "check"} ${one.text}`)).toEqual(ofCounts);
    expect(saidOfAll.weight).toHaveLength(1);
  });

  it.each(["g", "kg", "oz", "lb"] as const)("finds all its columns by the headings it is begun with, in %s", (unit) => {
    const columns = moveColumns(unit);
    const found = matchColumns(
      "moves",
      columns.map(({ heading }) => heading),
    );
    expect(found).toEqual(Object.fromEntries(columns.map(({ field }, i) => [field, i])));
  });
});

import { describe, expect, it } from "vitest";
import { logAddition } from "../../../src/runsheet/record/logAddition";
import { type MovesTable, moveAddition } from "../../../src/runsheet/record/moveRows";
import { type KnownItems, type Receipt, receiptDoubts, receiptMove } from "../../../src/runsheet/record/receipt";
import { amountDoubts } from "../../../src/runsheet/record/receiptAmount";
import type { WeightUnit } from "../../../src/runsheet/settings";
import { readTable } from "../../../src/runsheet/tables/readTables";
import { matchColumns } from "../../../src/runsheet/tables/registry";
import { LOG_COLUMNS } from "../../../src/runsheet/tables/runsLog";
import type { NewRows } from "../../../src/sheet/addition";
import type { CellValue, Sheet } from "../../../src/sheet/sheet";
import { DAY, ledgerFrom } from "../stock/moved";
import { logTable } from "./logs";

/** Five kilograms of soft wax, as they were written down; all invented. */
const RECEIPT: Receipt = {
  ...{ date: DAY, item: "Soft wax", lot: "W-7", quantity: 5, unit: "kg", paid: 60, bestBefore: DAY + 400, note: "" },
};

function itemsOf(headings: string[], ...rows: CellValue[][]) {
  return readTable({ type: "items", headings, rows, columns: matchColumns("items", headings) }, "g") ?? new Map();
}
const known = (changes: Partial<KnownItems> = {}): KnownItems => ({
  names: new Map([
    ["soft wax", "Soft wax"],
    ["tin", "Tin"],
  ]),
  counted: new Set(["tin"]),
  weighed: new Set(["soft wax"]),
  items: new Map(),
  ...changes,
});

describe("the row for what came in", () => {
  const moved = (receipt: Partial<Receipt>, unit: WeightUnit = "g") =>
    receiptMove({ ...RECEIPT, ...receipt }, known(), unit);

  it("is in the unit of the table of moves, and a number of pieces as it is", () => {
    expect(moved({})).toEqual({
      ...{ date: DAY, item: "Soft wax", lot: "W-7", change: 5000, paid: 60, bestBefore: DAY + 400, note: "" },
    });
    // A pound is 453.59237 g, an ounce a sixteenth of it: by definition.
    expect(moved({ quantity: 2, unit: "lb" }).change).toBe(907.18474);
    expect(moved({ quantity: 2, unit: "lb" }, "oz").change).toBe(32);
    expect(moved({ item: "Tin", quantity: 48, unit: "pieces" }, "lb").change).toBe(48);
  });

  it("is spelt as the other tables spell its item, and as it was typed where none knows it", () => {
    expect(moved({ item: " soft  WAX" }).item).toBe("Soft wax");
    expect(moved({ item: "Hard wax" }).item).toBe("Hard wax");
  });
});

describe("what of a receipt is asked about", () => {
  const LEDGER = [
    [DAY - 30, "Soft wax", "W-6", 5000, 55],
    [DAY - 20, "Soft wax", "W-5", -300],
  ] satisfies CellValue[][];
  /** What is asked about the receipt where it is another one in this. */
  function asked(receipt: Partial<Receipt>, more: { known?: Partial<KnownItems>; moves?: CellValue[][] } = {}) {
    const one = { ...RECEIPT, ...receipt };
    const { change } = receiptMove(one, known(), "g");
    return receiptDoubts({
      ...{ receipt: one, change, unit: "g", known: known(more.known), today: DAY },
      ledger: ledgerFrom(more.moves ?? LEDGER),
    });
  }

  it("is nothing where all is as usual", () => {
    expect(asked({})).toEqual([]);
    expect(asked({ bestBefore: undefined, paid: undefined })).toEqual([]);
    expect(asked({ bestBefore: DAY })).toEqual([]);
  });

  it("is an item that no other table knows, where there is one that could", () => {
    expect(asked({ item: "Sotf wax" })).toContain("Sotf wax stands in no other table: is it Soft wax, or new?");
    const nothing = { names: new Map(), counted: new Set<string>(), weighed: new Set<string>() };
    expect(asked({ item: "Sotf wax" }, { known: nothing })).toEqual([]);
  });

  it("is a lot that is not written, or that came in before", () => {
    expect(asked({ lot: "" })).toEqual(["no lot is written: what it goes into cannot be traced"]);
    expect(asked({ lot: "w-6 " })).toEqual(["lot W-6 of Soft wax came in before, on 2026-10-27: is this more of it?"]);
    // One that only went out was written down wrongly there, and is no reason to ask here.
    expect(asked({ lot: "W-5" })).toEqual([]);
    const dayless = [["soon", "Soft wax", "W-6", 5000]];
    expect(asked({ lot: "W-6" }, { moves: dayless })).toEqual([
      "lot W-6 of Soft wax came in before: is this more of it?",
    ]);
  });

  it("is a weight of what is counted, and a number of what is weighed", () => {
    const moves: CellValue[][] = [];
    expect(asked({ item: "Tin", quantity: 2, unit: "kg" }, { moves })).toEqual([
      "Tin is counted in the other tables: is 2 kg right?",
    ]);
    expect(asked({ quantity: 4, unit: "pieces" }, { moves })).toEqual([
      "Soft wax is weighed in the other tables: is 4 pieces right?",
    ]);
    // What stands in the tables both ways may come either way.
    const both = { counted: new Set(["soft wax"]), weighed: new Set(["soft wax"]) };
    expect(asked({}, { known: both, moves })).toEqual([]);
    expect(asked({ quantity: 4, unit: "pieces" }, { known: both, moves })).toEqual([]);
  });

  it("is a best before that was over on arrival, and a day that lies ahead", () => {
    expect(asked({ bestBefore: DAY - 1 })).toEqual(["its best before was over when it came in"]);
    expect(asked({ date: DAY + 1, bestBefore: undefined })).toEqual(["the day it came in lies ahead"]);
  });
});

describe("an amount that may be of another unit", () => {
  const ITEMS = itemsOf(
    ["Item", "On hand (g)", "Pack size (g)", "Pack price"],
    ["Soft wax", 900, 5000, 60],
    ["Dye", 40],
  );
  const doubts = (receipt: Partial<Receipt>, moves: CellValue[][] = [], items = ITEMS) => {
    const one = { ...RECEIPT, ...receipt };
    const { change } = receiptMove(one, known(), "g");
    return amountDoubts({ receipt: one, change, unit: "g", ledger: ledgerFrom(moves) }, items);
  };

  it("is far from what a pack holds: ten times as much or as little is still taken", () => {
    // A pack holds 5000 g.
    for (const quantity of [0.5, 5, 50]) expect(doubts({ quantity })).toEqual([]);
    expect(doubts({ quantity: 50.1 })).toEqual([
      "50.1 kg is far more than a pack holds, at most 5000 g: check the quantity and the unit",
    ]);
    expect(doubts({ quantity: 499, unit: "g" })).toEqual([
      "499 g is far less than a pack holds, at least 5000 g: check the quantity and the unit",
    ]);
  });

  it("is far from what came in before, which uses, runs and other items do not say", () => {
    const moves: CellValue[][] = [
      [DAY - 9, "soft wax", "A", 200],
      [DAY - 8, "Soft wax", "A", -1],
      [DAY - 7, "Soft wax", "A", 3, null, null, "2026-300-01"],
      [DAY - 6, "Hard wax", "A", 90_000],
    ];
    expect(doubts({ quantity: 19, unit: "g" }, moves)).toEqual([
      "19 g is far less than has come in before or a pack holds, at least 200 g: check the quantity and the unit",
    ]);
    expect(doubts({ quantity: 20, unit: "g" }, moves)).toEqual([]);
    expect(doubts({ quantity: 51 }, moves)).toHaveLength(1);
    expect(doubts({ quantity: 2001, unit: "g" }, moves, new Map())).toEqual([
      "2001 g is far more than has come in before, at most 200 g: check the quantity and the unit",
    ]);
  });

  it("is very far from what is on hand, where nothing else is known", () => {
    const dye = (quantity: number, unit: Receipt["unit"] = "g") => doubts({ item: "Dye", quantity, unit });
    expect([dye(4000), dye(0.4)]).toEqual([[], []]);
    expect(dye(5, "kg")).toEqual(["5 kg is far more than is on hand, at most 40 g: check the quantity and the unit"]);
    // Moves say what is on hand before the table of items does.
    const spent: CellValue[][] = [[DAY - 9, "Dye", "A", 0.5, null, null, "taken back"]];
    expect(doubts({ item: "Dye", quantity: 51, unit: "g" }, spent)).toHaveLength(1);
    expect(doubts({ item: "Dye", quantity: 50, unit: "g" }, spent)).toEqual([]);
  });

  it("is counted by pieces where it comes in pieces", () => {
    const tins = itemsOf(["Item", "Kind", "On hand", "Pack size", "Pack price"], ["Tin", "vessel", 3, 24, 30]);
    expect(doubts({ item: "Tin", quantity: 240, unit: "pieces" }, [], tins)).toEqual([]);
    expect(doubts({ item: "Tin", quantity: 2, unit: "pieces" }, [], tins)).toEqual([
      "2 pieces is far less than a pack holds, at least 24: check the quantity and the unit",
    ]);
  });

  it("is asked about where nothing is known of the item and nobody chose the unit", () => {
    expect(doubts({ item: "New oil", isUnitKept: true })).toEqual([
      "the unit is still kg, as of what was added before: is 5 kg right?",
    ]);
    expect(doubts({ item: "New oil" })).toEqual([]);
    expect(doubts({ isUnitKept: true })).toEqual([]);
  });

  it("is compared in the unit of the table of moves", () => {
    const items = itemsOf(["Item", "Pack size (g)", "Pack price"], ["Soft wax", 5000, 60]);
    const ledger = ledgerFrom([], "g", "kg");
    const said = (quantity: number) =>
      amountDoubts({ receipt: { ...RECEIPT, quantity }, change: quantity, unit: "kg", ledger }, items);
    expect(said(50)).toEqual([]);
    expect(said(51)).toEqual(["51 kg is far more than a pack holds, at most 5 kg: check the quantity and the unit"]);
  });
});

describe("rows for the table of moves", () => {
  const move = { date: DAY, item: "=Wax", lot: "", change: -5, paid: undefined, run: "2026-330-01", note: "pots: A" };

  it("go under a maker's own headings, in any order, and leave out what has no column", () => {
    const headings = ["Change (g)", "Shelf", "Item", "Date"];
    const table = { type: "moves", name: "Mine", headings, rows: [], columns: matchColumns("moves", headings) };
    const added = moveAddition([move], table as MovesTable, "g") as NewRows;
    expect(added.table).toBe("Mine");
    const cells = Object.fromEntries(added.headings.map((heading, i) => [heading, added.rows[0]?.[i]]));
    // Text stays text, whatever it begins with.
    expect(cells).toEqual({ "Change (g)": { number: -5 }, Item: { text: "=Wax" }, Date: { number: DAY } });
  });

  it("begin a table of their own where there is none, in the unit that is asked for", () => {
    const sheet = moveAddition([move], undefined, "oz") as Sheet;
    const [table] = sheet.tables ?? [];
    expect([sheet.name, table?.name, table?.rows]).toEqual(["Moves", "Moves", 1]);
    expect(table?.headings).toContain("Change (oz)");
    const shown = sheet.cells.flatMap(({ row, content }) => (row === 1 && content ? [Object.values(content)[0]] : []));
    // What is blank stays blank.
    expect([...shown].sort()).toEqual([-5, "2026-330-01", "=Wax", DAY, "pots: A"].sort());
  });
});

describe("rows for the runs log", () => {
  const row = { Lot: { text: "2026-330-01" }, Vessel: { text: "Tin" }, Notes: { text: "calm" } } as const;

  it("begin a log where there is none", () => {
    const sheet = logAddition([row], undefined) as Sheet;
    expect(sheet.tables?.[0]).toMatchObject({ name: "RunsLog", headings: LOG_COLUMNS.map(({ heading }) => heading) });
    expect([sheet.name, sheet.cells.filter(({ row, content }) => row === 1 && content).length]).toEqual([
      "Runs log",
      3,
    ]);
  });

  it("go on in a log that was begun without columns of today, and under headings that were renamed", () => {
    const before = LOG_COLUMNS.filter((column) => !("isLater" in column)).map(({ heading }) => heading as string);
    const headings = before.map((heading) => (heading === "Lot" ? "Run lot" : heading));
    const added = logAddition([row], logTable({ headings, rows: [] })) as NewRows;
    expect([added.table, added.headings]).toEqual(["RunsLog", headings]);
    expect(added.rows[0]?.filter((cell) => cell !== null)).toEqual([row.Lot, row.Vessel]);
  });

  it("ask for a column of old that is missing by the words of today", () => {
    const headings = LOG_COLUMNS.map(({ heading }) => heading as string).filter((heading) => heading !== "Yield");
    const added = logAddition([row], logTable({ headings, rows: [] })) as NewRows;
    expect(added.headings).toEqual(LOG_COLUMNS.map(({ heading }) => heading));
  });
});

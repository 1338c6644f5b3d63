import { afterEach, expect, it, vi } from "vitest";
import type { SheetModel } from "./model";
import { StandIn } from "./standIn";

// The stand-in must be as strict as Excel, or the other tests prove nothing.

afterEach(() => vi.unstubAllGlobals());

function excel(): StandIn {
  const standIn = new StandIn().install();
  standIn.sheet("Here", [["Name", 12]]);
  return standIn;
}

it("refuses to read what was not loaded, not synced, or only written", async () => {
  const standIn = excel();
  await Excel.run(async (context) => {
    const range = context.workbook.worksheets.getItem("Here").getRange("A1:B1");
    expect(() => range.values).toThrow("without load");
    range.load("values");
    expect(() => range.values).toThrow("without load");
    await context.sync();
    expect(range.values).toEqual([["Name", 12]]);
    expect(() => range.rowCount).toThrow("without load");
    const { worksheets } = context.workbook;
    expect(() => worksheets.items).toThrow("without load");
    const none = worksheets.getItemOrNullObject("Nowhere").load("name");
    expect(() => none.isNullObject).toThrow("without load");
    await context.sync();
    expect(none.isNullObject).toBe(true);
  });
  expect(standIn.syncs).toBe(2);
});

it("delivers nothing of a request that failed", async () => {
  const standIn = excel();
  standIn.failure = { sync: 1, done: "all" };
  await Excel.run(async (context) => {
    const sheet = context.workbook.worksheets.getItem("Here").load("name");
    await expect(context.sync()).rejects.toThrow("GeneralException");
    expect(() => sheet.name).toThrow("without load");
  });
});

it("does not know what it was not taught", async () => {
  excel();
  await Excel.run(async (context) => {
    expect(() => context.workbook.pivotTables).toThrow("no pivotTables");
    expect(() => {
      context.workbook.worksheets.getItem("Here").tabColor = "#FF0000";
    }).toThrow("cannot set tabColor");
  });
});

it("refuses a block that has not the size of its range", async () => {
  excel();
  for (const block of [[[1, 2, 3]], [[1], [2]], [[1, 2], [3]]]) {
    const wrong = Excel.run(async (context) => {
      context.workbook.worksheets.getItem("Here").getRange("A1:B2").values = block;
      await context.sync();
    });
    await expect(wrong).rejects.toThrow("size of the range");
  }
});

// What Excel makes of typed text is from memory, not from a published list.
it.each([
  ["=1+1", "=1+1", 0],
  ["+SUM(A1)", "=+SUM(A1)", 0],
  ["@x", "=@x", 0],
  ["-2", null, -2],
  ["007", null, 7],
  ["1/2", null, 46_000],
  ["5%", null, 5],
  ["TRUE", null, true],
  ["#N/A", null, "#N/A"],
  ["'quoted", null, "quoted"],
  ["'=1+1", null, "=1+1"],
  ["plain", null, "plain"],
])("takes %s as Excel takes it from the keyboard", (typed, formula, value) => {
  const cell = excel().book.typed(typed);
  expect([cell.formula, cell.value]).toEqual([formula, value]);
});

it("keeps Excel's rules for the names of sheets", () => {
  const { book } = excel();
  for (const name of ["HERE", "a:b", "a/b", "a?b", "[a]", "'a", "a'", "", "x".repeat(32), "History"]) {
    expect(() => book.add(name)).toThrow();
  }
});

it("refuses requests larger than Excel on the web takes", async () => {
  excel();
  const large = Excel.run(async (context) => {
    context.workbook.worksheets.getItem("Here").getRange("A1").values = [["x".repeat(6e6)]];
    await context.sync();
  });
  await expect(large).rejects.toMatchObject({ code: "RequestPayloadSizeLimitExceeded" });
});

it("gives a row added without values the formulas of its columns, and one with values nothing else", async () => {
  const standIn = new StandIn().install();
  const sheet = standIn.table("Stock", "Here", [
    ["Name", "Twice"],
    ["Tin", "=2*1"],
  ]);
  await Excel.run(async (context) => {
    const { rows } = context.workbook.tables.getItem("Stock");
    rows.add();
    rows.add(undefined, [["Jar", null as unknown as string]]);
    await context.sync();
    rows.load("count");
    await context.sync();
    expect(rows.count).toBe(3);
  });
  expect([sheet.cell(2, 0)?.value, sheet.cell(2, 1)?.formula]).toEqual([undefined, "=2*1"]);
  expect([sheet.cell(3, 0)?.value, sheet.cell(3, 1)?.formula]).toEqual(["Jar", undefined]);
});

it("spills into empty cells only", async () => {
  const { book } = excel();
  const sheet = book.sheets[0] as SheetModel;
  book.answer = () => [[1], [2]];
  sheet.enter(4, 0, "=PAIR()");
  expect(sheet.shown().get("5,0")?.value).toBe(2);
  sheet.enter(5, 0, "in the way");
  expect(sheet.shown().get("4,0")?.value).toBe("#SPILL!");
  expect(sheet.shown().get("5,0")?.value).toBe("in the way");
});

it("hides whole columns only, and writes no block into filtered rows", async () => {
  const standIn = excel();
  const onSheet = (batch: (sheet: Excel.Worksheet) => void): Promise<void> =>
    Excel.run(async (context) => {
      batch(context.workbook.worksheets.getItem("Here"));
      await context.sync();
    });
  const hide = (address: string) => onSheet((sheet) => Object.assign(sheet.getRange(address), { columnHidden: true }));
  const write = (address: string, values: number[][]) =>
    onSheet((sheet) => Object.assign(sheet.getRange(address), { values }));
  await expect(hide("B1")).rejects.toMatchObject({ code: "InvalidArgument" });
  await hide("B:B");
  expect(standIn.book.sheets[0]?.hidden).toEqual(new Set([1]));
  Object.assign(standIn.book.sheets[0] as object, { isFiltered: true });
  await write("A1", [[1]]);
  await expect(write("A1:A2", [[1], [2]])).rejects.toThrow("a filter hides some");
  const sheet = standIn.book.sheets[0] as SheetModel;
  Object.assign(sheet, { isFiltered: false });
  standIn.book.addTable({ sheet, row: 3, column: 5, rows: 3, columns: 1 }).isFiltered = true;
  await write("A1:A2", [[1], [2]]);
  await expect(write("A4:A5", [[1], [2]])).rejects.toThrow("a filter hides some");
});

it("leaves formulas at 0 that were entered while calculation was suspended, until it is asked to calculate", async () => {
  const standIn = excel();
  standIn.book.answer = () => 7;
  const [sheet] = standIn.book.sheets;
  await Excel.run(async (context) => {
    context.application.suspendApiCalculationUntilNextSync();
    context.workbook.worksheets.getItem("Here").getRange("A2").formulas = [["=1+6"]];
    await context.sync();
    expect(sheet?.cell(1, 0)?.value).toBe(0);
    context.workbook.worksheets.getItem("Here").getRange("A3").formulas = [["=1+6"]];
    await context.sync();
    expect([sheet?.cell(1, 0)?.value, sheet?.cell(2, 0)?.value]).toEqual([0, 7]);
    context.application.calculate("Recalculate");
    await context.sync();
    expect(sheet?.cell(1, 0)?.value).toBe(7);
  });
});

it("does not know an event that is said to be unknown", async () => {
  excel().book.unknown.add("worksheets.onNameChanged");
  await Excel.run(async (context) => {
    expect(() => context.workbook.worksheets.onNameChanged).toThrow("ApiNotFound");
  });
});

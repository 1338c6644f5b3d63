import { afterEach, describe, expect, it, vi } from "vitest";
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
    expect(() => range.values).toThrow("is not available");
    range.load("values");
    expect(() => range.values).toThrow("is not available");
    await context.sync();
    expect(range.values).toEqual([["Name", 12]]);
    expect(() => range.rowCount).toThrow("is not available");
    const { worksheets } = context.workbook;
    expect(() => worksheets.items).toThrow("is not available");
    const none = worksheets.getItemOrNullObject("Nowhere").load("name");
    expect(() => none.isNullObject).toThrow("is not available");
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
    expect(() => sheet.name).toThrow("is not available");
  });
});

/** What is left of a batch: that would fail a test which does not ask for it. */
async function faultsOf(batch: (sheet: Excel.Worksheet, context: Excel.RequestContext) => unknown): Promise<string[]> {
  const standIn = excel();
  const work = Excel.run(async (context) => {
    await batch(context.workbook.worksheets.getItem("Here"), context);
    await context.sync();
  });
  await work.catch(() => {});
  return standIn.faults.splice(0);
}

/** The client as one who misspells its names sees it. */
// biome-ignore lint/suspicious/noExplicitAny: the compiler would find the slips.
const misspelt = (object: object): any => object;

describe("a slip is noticed, whatever becomes of it afterwards:", () => {
  it.each<[string, Parameters<typeof faultsOf>[0], string]>([
    ["a method misspelt", (sheet) => misspelt(sheet).getRangeByIndexs(0, 0, 1, 1), "no getRangeByIndexs"],
    ["one of a range", (sheet) => misspelt(sheet.getRange("A1")).merg(), "no merg"],
    ["a property misspelt and set", (sheet) => Object.assign(sheet.getRange("A1"), { valuse: [[1]] }), "no valuse"],
    ["a property misspelt and read", (sheet) => misspelt(sheet).nmae, "no nmae"],
    ["a property misspelt and loaded", (sheet) => sheet.load("nmae"), "no nmae to load"],
    ["one on the way to another", (sheet) => sheet.load("protecton/protected"), "no protecton to load"],
    ["a load forgotten", (sheet) => sheet.name, "property 'name' is not available"],
    ["a sync forgotten", (sheet) => sheet.load("name").name, "property 'name' is not available"],
    ["what it was not taught", (sheet) => sheet.load("tabColor"), "no tabColor to load"],
    ["what it was not taught to set", (sheet) => Object.assign(sheet, { tabColor: "#FF0000" }), "cannot set tabColor"],
    ["a call of later sets", (sheet) => sheet.getRange("A1").getPrecedents(), "part of the ExcelApi 1.14 requirement"],
    [
      "a request of more than 5 MB",
      (sheet) => Object.assign(sheet.getRange("A1"), { values: [["x".repeat(6e6)]] }),
      "request of 6",
    ],
  ])("%s", async (_, batch, words) => {
    expect((await faultsOf(batch)).join(" ")).toContain(words);
  });

  it("an answer of more than 5 MB, which nobody but Excel knows beforehand", async () => {
    const standIn = excel();
    standIn.sheet(
      "Long",
      Array.from({ length: 200 }, () => ["x".repeat(30_000)]),
    );
    const read = Excel.run(async (context) => {
      context.workbook.worksheets.getItem("Long").getUsedRange(true).load("values");
      await context.sync();
    });
    await expect(read).rejects.toMatchObject({ code: "ResponsePayloadSizeLimitExceeded" });
    expect(standIn.faults.splice(0).join(" ")).toContain("answer of 6");
  });

  it("but no slip is none", async () => {
    expect(await faultsOf((sheet) => sheet.getRange("A1").load("values"))).toEqual([]);
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
  const standIn = excel();
  const large = Excel.run(async (context) => {
    context.workbook.worksheets.getItem("Here").getRange("A1").values = [["x".repeat(6e6)]];
    await context.sync();
  });
  await expect(large).rejects.toMatchObject({ code: "RequestPayloadSizeLimitExceeded" });
  expect(standIn.faults.splice(0).length).toBeGreaterThan(0);
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
  expect(standIn.faults.splice(0)).toHaveLength(2);
});

it("leaves formulas at 0 that were entered while calculation was suspended, until it is asked to calculate after that", async () => {
  const standIn = excel();
  standIn.book.answer = () => 7;
  const [sheet] = standIn.book.sheets;
  await Excel.run(async (context) => {
    context.application.suspendApiCalculationUntilNextSync();
    context.workbook.worksheets.getItem("Here").getRange("A2").formulas = [["=1+6"]];
    context.application.calculate("Recalculate");
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
  excel().book.unknown.add("worksheets.onChanged");
  const hear = Excel.run(async (context) => {
    context.workbook.worksheets.onChanged.add(async () => {});
    await context.sync();
  });
  await expect(hear).rejects.toMatchObject({ code: "ApiNotFound" });
});

describe("what Excel does of its own in a table's columns", () => {
  /** A table with values in its second column, the first of which becomes a formula; what stands there then. */
  const entered = async (fills: StandIn["book"]["fills"], rows: [string, number | null][]): Promise<unknown[]> => {
    const standIn = new StandIn().install();
    standIn.book.fills = fills;
    const sheet = standIn.table("Stock", "Here", [["Name", "Twice"], ...rows]);
    await Excel.run(async (context) => {
      context.workbook.worksheets.getItem("Here").getRange("B2").formulas = [["=A2"]];
      await context.sync();
    });
    return rows.map((_, i) => sheet.cell(1 + i, 1)?.formula ?? sheet.cell(1 + i, 1)?.value);
  };

  it.each<[StandIn["book"]["fills"], [string, number | null][], unknown[]]>([
    [
      "blank",
      [
        ["Tin", null],
        ["Jar", null],
      ],
      ["=A2", "=A3"],
    ],
    [
      "blank",
      [
        ["Tin", null],
        ["Jar", 7],
      ],
      ["=A2", 7],
    ],
    [
      "all",
      [
        ["Tin", null],
        ["Jar", 7],
      ],
      ["=A2", "=A3"],
    ],
    [
      "none",
      [
        ["Tin", null],
        ["Jar", null],
      ],
      ["=A2", undefined],
    ],
  ])("fills %s cells of %j", async (fills, rows, then) => {
    expect(await entered(fills, rows)).toEqual(then);
  });
});

it("may keep an old value where a function is at work, without a word of it", async () => {
  const standIn = excel();
  standIn.book.answer = () => 100;
  const sheet = standIn.sheet("Fills", [["=POUR.FILLWEIGHT(120)", "=1+1"]]);
  standIn.book.answer = () => 106;
  standIn.book.isLate = (formula) => formula.includes("POUR.");
  const shown = () => [sheet.cell(0, 0)?.value, sheet.cell(0, 1)?.value];
  await Excel.run(async (context) => {
    context.application.calculate("Recalculate");
    const { application } = context.workbook;
    application.load("calculationState");
    await context.sync();
    expect(application.calculationState).toBe("Done");
  });
  expect(shown()).toEqual([100, 106]);
  await standIn.book.deliver();
  expect(shown()).toEqual([106, 106]);
});

it("may refuse to set up a page, with all that is asked along with it after that", async () => {
  const standIn = excel();
  standIn.book.hasPrinter = false;
  const setUp = Excel.run(async (context) => {
    const sheet = context.workbook.worksheets.getItem("Here");
    sheet.getRange("A2").values = [["before"]];
    sheet.pageLayout.orientation = "Landscape";
    sheet.getRange("A3").values = [["after"]];
    await context.sync();
  });
  await expect(setUp).rejects.toMatchObject({ code: "GeneralException" });
  const [sheet] = standIn.book.sheets;
  expect([1, 2].map((row) => sheet?.cell(row, 0)?.value)).toEqual(["before", undefined]);
});

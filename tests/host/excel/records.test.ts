import { afterEach, describe, expect, it, vi } from "vitest";
import { buildRun } from "../../../src/runsheet/buildRun";
import { logAddition } from "../../../src/runsheet/record/logAddition";
import { logRows } from "../../../src/runsheet/record/logRows";
import { readBack } from "../../../src/runsheet/record/readBack";
import { FIRST_SETTINGS } from "../../../src/runsheet/settings";
import { describeRun } from "../../../src/runsheet/sheet/describeRun";
import { AT, LIVE_MARK, LIVE_NOTE, PLAIN_MARK, PLAIN_NOTE } from "../../../src/runsheet/sheet/layout";
import { plainNumbers } from "../../../src/runsheet/sheet/plainNumbers";
import type { Cell, CellValue, Content, Sheet } from "../../../src/sheet/sheet";
import { HOSTILE_TEXTS } from "../../hostileTexts";
import { logTable } from "../../runsheet/record/logs";
import type { SheetModel, TableModel, Value } from "./model";
import { type Failure, newHost, StandIn } from "./standIn";

afterEach(() => vi.unstubAllGlobals());

const host = newHost();
const excel = (): StandIn => new StandIn().install();
const text = (value: string): Content => ({ text: value });
const number = (value: number): Content => ({ number: value });
const at = (row: number, column: number, content: Content): Cell => ({ row, column, content });
const named = (standIn: StandIn, name: string): SheetModel => standIn.book.find(name) as SheetModel;

const failures = (syncs: readonly number[], how: readonly Failure["done"][]): Failure[] =>
  syncs.flatMap((sync) => how.map((done): Failure => ({ sync, done, code: "GeneralException" })));

describe("reading a sheet", () => {
  it("begins at A1, wherever its first cell is, and every row is as long", async () => {
    const standIn = excel();
    const sheet = standIn.sheet("Notes");
    sheet.enter(2, 3, "'=1+1");
    sheet.enter(4, 1, 0.1 + 0.2);
    expect(await host.readSheet("Notes")).toEqual([
      [null, null, null, null],
      [null, null, null, null],
      [null, null, null, "=1+1"],
      [null, null, null, null],
      [null, 0.1 + 0.2, null, null],
    ]);
  });

  it("gives what formulas show and spill, and errors as errors", async () => {
    const standIn = excel();
    const spilled: Value[][] = [[90.5], [5.5]];
    standIn.book.answer = (formula) => (formula === "=NA()" ? "#N/A" : formula === '=""' ? "" : spilled);
    standIn.sheet("Run", [
      ["=POUR.RECIPESPLIT(96,B1:B2,C1:C2)", "=NA()"],
      [null, '=""'],
      ["'#N/A", true],
    ]);
    expect(await host.readSheet("Run")).toEqual([
      [90.5, { error: "#N/A" }],
      [5.5, null],
      ["#N/A", true],
    ]);
  });

  it.each([0, 1, 1000])("is one call, with %i rows", async (count) => {
    const standIn = excel();
    const rows = Array.from({ length: count }, (_, i) => [`Vessel ${i}`, i / 3]);
    standIn.sheet("Stock", rows);
    expect(await host.readSheet("Stock")).toEqual(rows);
    expect(standIn.syncs).toBe(1);
  });

  it("that is gone is named", async () => {
    excel();
    await expect(host.readSheet("Gone")).rejects.toThrow("could not read Gone: it is no longer in the workbook");
  });
});

describe("writing into cells", () => {
  const withSheet = (): StandIn => {
    const standIn = excel();
    const sheet = standIn.sheet("Run", [
      ["Title", "=1+1", 3],
      ["a", "b", "c"],
      ["'=kept", "=A1", 6],
    ]);
    sheet.paint(1, 1, "fill.color", "#FFF9E3");
    return standIn;
  };

  it.each([1, 1000])("is two calls for %i cells", async (count) => {
    const standIn = withSheet();
    const cells = Array.from({ length: count }, (_, i) => at(3 * i, i % 5, number(i)));
    await host.write("Run", cells);
    expect(standIn.syncs).toBe(2);
    const sheet = named(standIn, "Run");
    expect(cells.every(({ row, column }, i) => sheet.cell(row, column)?.value === i)).toBe(true);
  });

  it("leaves the cells between, and all looks", async () => {
    const standIn = withSheet();
    const sheet = named(standIn, "Run");
    const before = new Map(sheet.cells);
    await host.write("Run", [at(2, 2, number(7)), at(0, 0, text("New")), { row: 1, column: 1, look: "input" }]);
    expect(sheet.cell(0, 0)?.value).toBe("New");
    expect(sheet.cell(2, 2)?.value).toBe(7);
    for (const key of ["0,1", "0,2", "1,0", "1,1", "1,2", "2,0", "2,1"]) {
      expect(sheet.cells.get(key)).toEqual(before.get(key));
    }
    expect(sheet.look(1, 1)).toEqual({ "fill.color": "#FFF9E3" });
  });

  it.each(HOSTILE_TEXTS)("writes %j as the text it is", async (value) => {
    const standIn = withSheet();
    await host.write("Run", [at(0, 1, text(value)), at(5, 0, text(value))]);
    for (const row of [0, 5]) {
      const cell = named(standIn, "Run").cell(row, row === 0 ? 1 : 0);
      expect(cell).toEqual({ formula: null, value, type: "String" });
    }
  });

  it("writes a formula as a formula, and an empty text empties a cell", async () => {
    const standIn = withSheet();
    await host.write("Run", [at(0, 2, { formula: "=2+2" }), at(1, 0, text(""))]);
    expect(named(standIn, "Run").cell(0, 2)?.formula).toBe("=2+2");
    expect(named(standIn, "Run").cell(1, 0)).toBeUndefined();
  });

  it("turns a formula that spills into its numbers, in whatever order they are given", async () => {
    for (const order of [
      [0, 1, 2],
      [2, 1, 0],
    ]) {
      const standIn = excel();
      standIn.book.answer = () => [[90], [5], [1]];
      standIn.sheet("Run", [["=POUR.RECIPESPLIT(96,B1:B3,C1:C3)"]]);
      const values = (await host.readSheet("Run")).map(([value]) => value as number);
      expect(values).toEqual([90, 5, 1]);
      await host.write(
        "Run",
        order.map((row) => at(row, 0, number(values[row] as number))),
      );
      expect([...named(standIn, "Run").cells.values()].every(({ formula }) => formula === null)).toBe(true);
      expect(await host.readSheet("Run")).toEqual([[90], [5], [1]]);
    }
  });

  it("asks nothing of Excel when there is nothing to write", async () => {
    const standIn = withSheet();
    await host.write("Run", []);
    await host.write("Run", [{ row: 0, column: 0, look: "blank" }]);
    expect(standIn.syncs).toBe(0);
  });

  it.each([
    ["a text too long", text("x".repeat(40_000)), "Cell C4 would hold 40,000 characters"],
    ["a number that is none", number(Number.POSITIVE_INFINITY), "Cell C4 would hold Infinity"],
    ["a formula without its sign", { formula: "1+1" }, "The formula of cell C4"],
  ])("refuses %s before anything is written", async (_, content, message) => {
    const standIn = withSheet();
    const before = standIn.book.snapshot();
    await expect(host.write("Run", [at(0, 0, text("New")), at(3, 2, content)])).rejects.toThrow(message);
    expect(standIn.book.snapshot()).toEqual(before);
    expect(standIn.syncs).toBe(0);
  });

  it.each([
    ["protected", { protected: true }, "Run is protected. Take the protection off"],
    ["filtered", { isFiltered: true }, "A filter hides rows of Run. Clear it"],
    [
      "partly filtered",
      { filteredTable: true },
      "A filter hides rows of Run, in the table Beside. Click into the table",
    ],
  ])("refuses a %s sheet as a whole", async (_, how, message) => {
    const standIn = withSheet();
    const sheet = named(standIn, "Run");
    // Its rows are those of the cells that are written, and a filter hides whole rows.
    const table = standIn.book.addTable({ sheet, row: 0, column: 9, rows: 3, columns: 1 }, "Beside");
    if ("filteredTable" in how) table.isFiltered = true;
    else Object.assign(sheet, how);
    const before = standIn.book.snapshot();
    await expect(host.write("Run", [at(0, 0, text("New")), at(2, 2, number(1))])).rejects.toThrow(message);
    expect(standIn.book.snapshot()).toEqual(before);
  });

  it.each([...failures([1], ["nothing", "half", "all"]), ...failures([2], ["nothing", "half"])])(
    "leaves all as it was when call $sync fails with $done of it done",
    async (failure) => {
      const standIn = withSheet();
      const before = standIn.book.snapshot();
      standIn.failure = failure;
      const write = host.write("Run", [at(0, 0, text("New")), at(1, 1, number(1)), at(2, 2, number(2))]);
      await expect(write).rejects.toThrow("Excel could not write on Run");
      expect(standIn.book.snapshot()).toEqual(before);
    },
  );

  it("says that some cells may be written where so many go in several pieces and Excel fails", async () => {
    const standIn = withSheet();
    standIn.failure = { sync: 2, done: "half" };
    const cells = Array.from({ length: 6000 }, (_, row) => at(row, 0, number(row)));
    await expect(host.write("Run", cells)).rejects.toThrow(
      /^Excel could not write on Run.*Some of the cells may be written/,
    );
    expect(named(standIn, "Run").cell(0, 0)?.value).toBe(0);
    expect(named(standIn, "Run").cell(5999, 0)).toBeUndefined();
  });

  it("has written all of it when only Excel's answer is lost", async () => {
    const standIn = withSheet();
    standIn.failure = { sync: 2, done: "all" };
    await expect(host.write("Run", [at(0, 0, text("New")), at(2, 2, number(2))])).rejects.toThrow("Try again");
    expect(named(standIn, "Run").cell(0, 0)?.value).toBe("New");
    expect(named(standIn, "Run").cell(2, 2)?.value).toBe(2);
  });

  it("writes nothing when a formula is refused", async () => {
    const standIn = withSheet();
    const before = standIn.book.snapshot();
    const write = host.write("Run", [at(0, 0, text("New")), at(2, 2, { formula: "=Nowhere[Fill]" })]);
    await expect(write).rejects.toThrow("Excel could not write on Run");
    expect(standIn.book.snapshot()).toEqual(before);
  });

  it("names a sheet that is gone", async () => {
    excel();
    await expect(host.write("Gone", [at(0, 0, number(1))])).rejects.toThrow("write on Gone: it is no longer");
  });
});

describe("adding rows to a table", () => {
  const HEADINGS = ["Lot", "Date", "Vessel", "Good"];

  /** A log with columns in another order, and one of the user's own that is calculated. */
  const withLog = (): { standIn: StandIn; sheet: SheetModel; table: TableModel } => {
    const standIn = excel();
    const sheet = standIn.sheet("Runs log", [
      ["Vessel", "Mine", "Date", "Lot", "Good", "Twice"],
      ["Tin", "a remark", 46_351, "'2026-329-01", 5],
      ["Jar", null, 46_351, "'2026-329-01", 7],
    ]);
    const table = standIn.book.addTable({ sheet, row: 0, column: 0, rows: 3, columns: 6 });
    standIn.book.renameTable(table, "RunsLog");
    for (const row of [1, 2]) sheet.enter(row, 5, "=RunsLog[[#This Row],[Good]]*2");
    for (const row of [1, 2]) sheet.paint(row, 2, "numberFormat", "yyyy-mm-dd");
    return { standIn, sheet, table };
  };
  const rowsOf = (count: number): (Content | null)[][] =>
    Array.from({ length: count }, (_, i) => [
      text(`2026-330-${i}`),
      number(46_352),
      text("=Bowl"),
      i ? number(i) : null,
    ]);
  const add = (count = 3): Promise<void> =>
    host.append([{ table: "RunsLog", headings: HEADINGS, rows: rowsOf(count) }]);

  it("finds the columns by their headings, and leaves the user's own blank or calculated", async () => {
    const { sheet, table } = withLog();
    await add(2);
    expect(table.area).toMatchObject({ row: 0, rows: 5, columns: 6 });
    const values = (row: number) => Array.from({ length: 6 }, (_, column) => sheet.cell(row, column)?.value ?? null);
    expect(values(3)).toEqual(["=Bowl", null, 46_352, "2026-330-0", null, 0]);
    expect(values(4)).toEqual(["=Bowl", null, 46_352, "2026-330-1", 1, 0]);
    for (const row of [3, 4]) {
      expect(sheet.cell(row, 5)?.formula).toBe("=RunsLog[[#This Row],[Good]]*2");
      expect(sheet.cell(row, 0)).toEqual({ formula: null, value: "=Bowl", type: "String" });
      expect(sheet.look(row, 2)).toEqual({ numberFormat: "yyyy-mm-dd" });
    }
    expect(values(2)).toEqual(["Jar", null, 46_351, "2026-329-01", 7, 0]);
  });

  it.each([1, 100, 1000])("is three calls for %i rows", async (count) => {
    const { standIn, table } = withLog();
    await add(count);
    expect(standIn.syncs).toBe(3);
    expect(table.area.rows).toBe(3 + count);
  });

  it("has the formulas calculated, which it suspended while it wrote", async () => {
    const { standIn, sheet } = withLog();
    standIn.book.answer = () => 7;
    await add(2);
    expect([3, 4].map((row) => sheet.cell(row, 5)?.value)).toEqual([7, 7]);
    expect(standIn.syncs).toBe(3);
  });

  it("asks nothing of Excel for no rows", async () => {
    const { standIn } = withLog();
    await add(0);
    expect(standIn.syncs).toBe(0);
  });

  it.each(HOSTILE_TEXTS)("writes %j as the text it is", async (value) => {
    const { sheet } = withLog();
    await host.append([{ table: "RunsLog", headings: ["Vessel"], rows: [[text(value)]] }]);
    expect(sheet.cell(3, 0)).toEqual({ formula: null, value, type: "String" });
  });

  it("keeps the total row at the end", async () => {
    const { sheet, table } = withLog();
    sheet.enter(3, 0, "Total");
    table.area = { ...table.area, rows: 4 };
    table.showTotals = true;
    await add(2);
    expect([3, 4, 5].map((row) => sheet.cell(row, 0)?.value)).toEqual(["=Bowl", "=Bowl", "Total"]);
    expect(table.area.rows).toBe(6);
  });

  it("moves down what stands below, and nothing beside it", async () => {
    const { standIn, sheet } = withLog();
    sheet.enter(3, 0, "right below");
    sheet.enter(3, 9, "beside");
    sheet.enter(6, 1, "h");
    const other = standIn.book.addTable({ sheet, row: 6, column: 1, rows: 2, columns: 2 });
    await add(3);
    expect(sheet.cell(6, 0)?.value).toBe("right below");
    expect(sheet.cell(3, 9)?.value).toBe("beside");
    expect(sheet.cell(9, 1)?.value).toBe("h");
    expect(other.area).toMatchObject({ row: 9, column: 1, rows: 2, columns: 2 });
  });

  it.each([
    ["a wider table", { row: 5, column: 3, rows: 2, columns: 9 }],
    ["a table that begins further left", { row: 5, column: 1, rows: 2, columns: 8 }],
  ])("is refused in words where %s below would be torn apart", async (_, area) => {
    const { standIn, sheet } = withLog();
    standIn.book.addTable({ sheet, ...area });
    const before = standIn.book.snapshot();
    await expect(add()).rejects.toThrow("cells would have to move and cannot, because of another table");
    expect(standIn.book.snapshot()).toEqual(before);
  });

  it("is refused in words where merged cells below would be torn apart", async () => {
    const { standIn, sheet } = withLog();
    sheet.merges.push("8,4 1x4 true");
    const before = standIn.book.snapshot();
    await expect(add()).rejects.toThrow("merged cells. Move those away");
    expect(standIn.book.snapshot()).toEqual(before);
  });

  it("is refused in words where something would leave the sheet, and the rows that fitted are taken back", async () => {
    const { standIn, sheet } = withLog();
    sheet.enter(1_048_574, 0, "the last but one");
    const before = standIn.book.snapshot();
    await expect(add(3)).rejects.toThrow("the sheet has no room left at its end");
    expect(standIn.book.snapshot()).toEqual(before);
  });

  it.each<[string, (log: ReturnType<typeof withLog>) => unknown, string]>([
    ["a missing heading", ({ sheet }) => sheet.enter(0, 4, "Fine ones"), 'RunsLog has no column "Good"'],
    ["a protected sheet", ({ sheet }) => Object.assign(sheet, { protected: true }), "Runs log is protected"],
    ["a filter", ({ table }) => Object.assign(table, { isFiltered: true }), "A filter hides rows of Runs log"],
    [
      "a filter of the sheet",
      ({ sheet }) => Object.assign(sheet, { isFiltered: true }),
      "hides rows of Runs log. Clear",
    ],
    [
      "another table's filter",
      ({ standIn, sheet }) =>
        Object.assign(standIn.book.addTable({ sheet, row: 0, column: 9, rows: 3, columns: 1 }), { isFiltered: true }),
      "A filter hides rows of Runs log, in the table Table2",
    ],
    ["a table that is gone", ({ sheet }) => sheet.tables.pop(), "it is no longer in the workbook"],
  ])("refuses %s before anything is written", async (_, spoil, message) => {
    const log = withLog();
    spoil(log);
    const before = log.standIn.book.snapshot();
    await expect(add()).rejects.toThrow(message);
    expect(log.standIn.book.snapshot()).toEqual(before);
    expect(log.standIn.syncs).toBe(1);
  });

  it("names the cell whose text is too long, and adds nothing", async () => {
    const { standIn } = withLog();
    const before = standIn.book.snapshot();
    const rows = [[text("Tin")], [text("x".repeat(40_000))]];
    await expect(host.append([{ table: "RunsLog", headings: ["Lot"], rows }])).rejects.toThrow(
      "Cell D5 would hold 40,000 characters",
    );
    expect(standIn.book.snapshot()).toEqual(before);
  });

  it.each(failures([1, 2, 3], ["nothing", "half", "all"]))(
    "leaves the table as it was when call $sync fails with $done of it done",
    async (failure) => {
      const { standIn, sheet } = withLog();
      sheet.enter(4, 0, "below");
      const before = standIn.book.snapshot();
      standIn.failure = failure;
      await expect(add()).rejects.toThrow(/^Excel could not add to the table RunsLog: .*Try again\.$/);
      expect(standIn.book.snapshot()).toEqual(before);
    },
  );

  it("never takes back a row that somebody else added at the same moment, and says so", async () => {
    const { standIn, sheet, table } = withLog();
    standIn.failure = { sync: 2, done: "nothing" };
    standIn.meanwhile = (sync) => {
      if (sync === 2) standIn.book.addRow(table, ["Theirs", "", 46_353, "2026-331-01", 4, ""]);
    };
    await expect(add()).rejects.toThrow("Unfinished rows may be left at the end of the table");
    expect(table.area.rows).toBe(4);
    expect(sheet.cell(3, 0)?.value).toBe("Theirs");
  });

  it("says so when the rows cannot be taken back", async () => {
    const { standIn, sheet } = withLog();
    standIn.failure = { sync: 2, done: "half" };
    standIn.meanwhile = (sync) => {
      if (sync > 2) sheet.protected = true;
    };
    await expect(add()).rejects.toThrow("Unfinished rows may be left at the end of the table; delete them yourself.");
  });
});

describe("adding to two tables and a new one", () => {
  const withTables = (): StandIn => {
    const standIn = excel();
    standIn.table("Log", "Runs log", [
      ["Lot", "Candles"],
      ["'L-1", 10],
    ]);
    // It was begun empty: its last rows are blank.
    const moves = standIn.sheet("Moves", [
      ["Item", "Change"],
      ["Wax", 900],
    ]);
    standIn.book.renameTable(standIn.book.addTable({ sheet: moves, row: 0, column: 0, rows: 4, columns: 2 }), "Moves");
    moves.enter(4, 0, "below");
    return standIn;
  };
  const readings: Sheet = {
    name: "Readings",
    widths: [10],
    cells: [at(0, 0, text("Test")), at(1, 0, text("T-1"))],
    tables: [{ name: "Readings", row: 0, column: 0, headings: ["Test"], rows: 1 }],
  };
  const used = (item: string, change: number): Content[] => [text(item), number(change)];
  const rows = [
    { table: "Log", headings: ["Lot", "Candles"], rows: [[text("L-2"), number(8)]] },
    { table: "Moves", headings: ["Item", "Change"], rows: [used("Wax", -500), used("Oil", -20), used("Tin", -8)] },
  ];
  const values = (standIn: StandIn, sheet: string, count: number) =>
    Array.from({ length: count }, (_, row) => [0, 1].map((column) => named(standIn, sheet).cell(row, column)?.value));

  it("writes all in three calls, a new sheet too, fills blank rows first and moves down what is below", async () => {
    for (const additions of [rows, [...rows, readings]]) {
      const standIn = withTables();
      await host.append(additions);
      expect(standIn.syncs).toBe(3);
      expect(values(standIn, "Runs log", 3)).toEqual([
        ["Lot", "Candles"],
        ["L-1", 10],
        ["L-2", 8],
      ]);
      expect(values(standIn, "Moves", 6)).toEqual([
        ["Item", "Change"],
        ["Wax", 900],
        ["Wax", -500],
        ["Oil", -20],
        ["Tin", -8],
        ["below", undefined],
      ]);
      expect(standIn.book.tables().map(({ area }) => area.rows)).toEqual(additions === rows ? [3, 5] : [3, 5, 2]);
      expect(standIn.book.active).toBe(0);
    }
  });

  it.each(
    failures([1, 2, 3], ["nothing", "half", "all"]).flatMap((failure) =>
      [rows, [...rows, readings], [readings]].map((additions) => ({ failure, additions })),
    ),
  )("leaves all as it was: $failure", async ({ failure, additions }) => {
    const standIn = withTables();
    const before = standIn.book.snapshot();
    standIn.failure = failure;
    await expect(host.append(additions)).rejects.toThrow(/^Excel could not add to .*Try again\.$/);
    expect(standIn.book.snapshot()).toEqual(before);
  });

  it("leaves all as it was when Excel refuses a command in the middle", async () => {
    const standIn = withTables();
    const merged = standIn.book.find("Moves") as SheetModel;
    merged.merges.push("6,1 1x4 true");
    const before = standIn.book.snapshot();
    await expect(host.append([...rows, readings])).rejects.toThrow("cells would have to move and cannot");
    expect(standIn.book.snapshot()).toEqual(before);
  });
});

describe("a run sheet's whole way", () => {
  const columns = { vessel: 0, quantity: 1, fill: 2, scent: 3, load: 4 };
  const rows: CellValue[][] = [
    ["=Tin", 6, 106, "Cedar", 0.06],
    ["Bowl", 4, 212, "Cedar", 0.06],
    ["Plain", 5, 100, "", null],
  ];
  const run = buildRun({ pour: { type: "pour", headings: [], rows, columns } }, FIRST_SETTINGS);

  /** Any numbers will do, as many as the ingredients: what they are is tested where they are computed. */
  const answer = (formula: string): Value | Value[][] => {
    const [, first, last] = /^=POUR\.RECIPESPLIT\(.*,B(\d+):B(\d+),/.exec(formula) ?? [];
    if (first) return Array.from({ length: Number(last) - Number(first) + 1 }, (_, i) => [1400 / (i + 1)]);
    if (formula.includes("POUR.NETLABEL")) return "Net Wt 3 oz (106 g)";
    // Of what begins with IF only what may be #N/A is a number; the rest is words, or blank until it is written.
    return formula.startsWith("=IF(") && !formula.endsWith("NA())") ? "" : 7;
  };

  /** What says that a sheet is live, and what stands there then. */
  const PLAIN = new Map<CellValue, string>([
    [LIVE_NOTE, PLAIN_NOTE],
    [LIVE_MARK, PLAIN_MARK],
  ]);

  it("is written live, frozen as it shows, read back and logged twice", async () => {
    const standIn = excel();
    standIn.book.answer = answer;
    standIn.sheet("Batch");
    const lot = "2026-330-01";
    const name = await host.addSheet(describeRun(run, { lot, date: 46_352, settings: FIRST_SETTINGS }));
    const live = await host.readSheet(name);
    const cells = plainNumbers(live);
    expect(cells.length).toBeGreaterThan(10);
    await host.write(name, cells);

    const frozen = await host.readSheet(name);
    expect(frozen).toEqual(live.map((row) => row.map((value) => PLAIN.get(value) ?? value)));
    const sheet = named(standIn, name);
    // The net weight still follows the candle that is weighed; all else is plain.
    const formulas = cells.flatMap(({ row, column }) => (sheet.cell(row, column)?.formula ? [column] : []));
    expect(formulas).toEqual([AT.label, AT.label, AT.label]);
    const ours = [...sheet.cells.values()].filter(({ formula }) => formula?.includes("POUR."));
    expect(ours).toHaveLength(3);
    expect(plainNumbers(frozen)).toEqual([]);

    const poured = readBack(frozen);
    expect(poured?.lot).toBe(lot);
    const logged = logRows(poured as NonNullable<typeof poured>, new Map());
    await host.append([logAddition(logged, undefined)]);
    const [begun] = await host.tables();
    await host.append([logAddition(logged, logTable({ headings: begun?.headings ?? [], rows: [] }))]);
    const [log] = await host.tables();
    const read = await host.read(log as NonNullable<typeof log>);
    expect(read.rows).toHaveLength(6);
    expect(read.rows.slice(3)).toEqual(read.rows.slice(0, 3));
    expect(read.rows.map((row) => row[3])).toEqual(["=Tin", "Bowl", "Plain", "=Tin", "Bowl", "Plain"]);
  });
});

import { afterEach, describe, expect, it, vi } from "vitest";
import { ExcelHost } from "../../../src/host/excel/adapter";
import { DamagedSettings, type Source, StillCalculating } from "../../../src/host/host";
import { everything } from "./client/requirementSets";
import { newHost, StandIn } from "./standIn";

afterEach(() => {
  vi.unstubAllGlobals();
  vi.useRealTimers();
});

const excel = (): StandIn => new StandIn().install();
const host = newHost();
const place = { sheet: "Stock", row: 0, column: 0, rows: 2, columns: 2 };
const headings = ["Vessel", "Fill"];

describe("the first cells of the sheets", () => {
  it("are read in two calls, however many sheets there are, blank and wrong ones too", async () => {
    const standIn = excel();
    standIn.sheet("Renamed").enter(0, 0, "Run sheet 2026-330-01");
    standIn.sheet("Empty").enter(4, 4, "not here");
    standIn.book.answer = () => "#N/A";
    standIn.sheet("Wrong").enter(0, 0, "=NA()");
    for (let i = 0; i < 40; i++) standIn.sheet(`Sheet ${i}`);
    const before = standIn.syncs;
    const cells = await host.firstCells();
    expect(standIn.syncs - before).toBe(2);
    expect(cells).toHaveLength(standIn.book.sheets.length);
    const of = (name: string) => cells.find(({ sheet }) => sheet === name)?.value;
    expect(of("Renamed")).toBe("Run sheet 2026-330-01");
    expect(of("Empty")).toBe(null);
    expect(of("Wrong")).toEqual({ error: "#N/A" });
  });
});

describe("tables", () => {
  it("are listed in the order of the sheets, then down and across", async () => {
    const standIn = excel();
    const first = standIn.sheet("First");
    standIn.table("Vessels", "Second", [
      ["Vessel", "Water"],
      ["Tin", 120],
      ["Jar", 200],
    ]);
    for (const [row, column] of [
      [9, 0],
      [0, 4],
      [0, 0],
    ] as const) {
      first.enter(row, column, `T${row}${column}`);
      const table = standIn.book.addTable({ sheet: first, row, column, rows: 2, columns: 1 });
      standIn.book.renameTable(table, `Table_${row}_${column}`);
    }
    const tables = await host.tables();
    expect(tables.map(({ name }) => name)).toEqual(["Table_0_0", "Table_0_4", "Table_9_0", "Vessels"]);
    expect(tables.at(-1)).toEqual({
      name: "Vessels",
      place: { sheet: "Second", row: 0, column: 0, rows: 3, columns: 2 },
      headings: ["Vessel", "Water"],
    });
    expect(standIn.syncs).toBe(2);
  });

  it("are left out without a heading row, and there may be none", async () => {
    const standIn = excel();
    expect(await host.tables()).toEqual([]);
    standIn.table("Bare", "One", [["a"], [1]]);
    Object.assign(standIn.book.tables()[0] as object, { showHeaders: false });
    expect(await host.tables()).toEqual([]);
  });

  it.each([1, 100, 1000])("are read in one call, %i rows too", async (count) => {
    const standIn = excel();
    const rows = Array.from({ length: count }, (_, i) => [`Vessel ${i}`, i / 3]);
    standIn.table("Vessels", "Stock", [["Vessel", "Water"], ...rows]);
    const [source] = await host.tables();
    const before = standIn.syncs;
    const read = await host.read(source as Source);
    expect(standIn.syncs - before).toBe(1);
    expect(read).toEqual({ ...source, rows, below: 0, hidden: [] });
  });

  it("are read exactly: text as text, blanks as null, errors as errors, no total row", async () => {
    const standIn = excel();
    const sheet = standIn.table("Mixed", "Stock", [
      ["A", "B", "C"],
      ["'007", 0.1 + 0.2, true],
      [null, "'#N/A", "'=1+1"],
      ["שעווה", 46_352, ""],
      ["Total", 9, 9],
    ]);
    standIn.book.answer = (formula) => (formula === "=NA()" ? "#N/A" : "");
    sheet.enter(3, 2, "=NA()");
    sheet.enter(2, 0, '=""');
    Object.assign(standIn.book.tables()[0] as object, { showTotals: true });
    const [source] = await host.tables();
    expect(await host.read(source as Source)).toEqual({
      name: "Mixed",
      place: { sheet: "Stock", row: 0, column: 0, rows: 4, columns: 3 },
      headings: ["A", "B", "C"],
      rows: [
        ["007", 0.1 + 0.2, true],
        [null, "#N/A", "=1+1"],
        ["שעווה", 46_352, { error: "#N/A" }],
      ],
      below: 0,
      hidden: [],
    });
  });

  it("that are gone are named", async () => {
    excel();
    const gone: Source = {
      name: "Gone",
      place: { sheet: "S", row: 0, column: 0, rows: 2, columns: 1 },
      headings: ["a"],
    };
    await expect(host.read(gone)).rejects.toThrow("could not read the table Gone: it is no longer in the workbook");
  });
});

describe("the selection", () => {
  const withCells = (): StandIn => {
    const standIn = excel();
    standIn.sheet("Stock", [[], [null, "Vessel", 2026], [null, "Tin", 120], [null, "Jar", null]]);
    return standIn;
  };

  it("has its first row as headings, and can be read again", async () => {
    const standIn = withCells();
    standIn.book.selected = [{ row: 1, column: 1, rows: 3, columns: 2 }];
    const selection = await host.selection();
    expect(selection).toEqual({
      name: "",
      place: { sheet: "Stock", row: 1, column: 1, rows: 3, columns: 2 },
      headings: ["Vessel", "2026"],
      rows: [
        ["Tin", 120],
        ["Jar", null],
      ],
      below: 0,
      hidden: [],
    });
    expect(standIn.syncs).toBe(2);
    standIn.book.sheets[0]?.enter(3, 2, 200);
    expect((await host.read(selection)).rows).toEqual([
      ["Tin", 120],
      ["Jar", 200],
    ]);
  });

  it("may be whole columns: only what is in them counts", async () => {
    const standIn = withCells();
    standIn.book.selected = [{ row: 0, column: 1, rows: 1_048_576, columns: 3 }];
    expect((await host.selection()).place).toEqual({ sheet: "Stock", row: 1, column: 1, rows: 3, columns: 2 });
  });

  it.each([
    ["one cell", [{ row: 1, column: 1, rows: 1, columns: 1 }], "One cell is selected"],
    ["nothing in it", [{ row: 50, column: 1, rows: 3, columns: 3 }], "The selected cells are empty"],
    [
      "two blocks",
      [
        { row: 1, column: 1, rows: 2, columns: 1 },
        { row: 5, column: 1, rows: 2, columns: 1 },
      ],
      "Select one block of cells",
    ],
  ])("is refused with %s", async (_, selected, message) => {
    const standIn = withCells();
    standIn.book.selected = selected;
    await expect(host.selection()).rejects.toThrow(message);
  });
});

describe("cells that are not calculated yet", () => {
  // Of a selection only a further call can tell what stands around it.
  const ways: [string, (host: ExcelHost) => Promise<unknown>, more?: number][] = [
    ["a table", async (host) => (await host.read({ name: "Vessels", place, headings })).rows],
    ["a range", async (host) => (await host.read({ name: "", place, headings })).rows],
    ["the selection", async (host) => (await host.selection()).rows, 1],
    ["a sheet", async (host) => (await host.readSheet("Stock")).slice(1)],
  ];

  /** A table whose formula shows 100 and would give 106: Excel has not worked it out since. Invented numbers. */
  const withFormula = (shown: number | string, rows = 1): StandIn => {
    const standIn = excel();
    standIn.book.answer = () => shown;
    const cells = Array.from({ length: rows }, () => ["Tin", "=POUR.FILLWEIGHT(120)"]);
    standIn.table("Vessels", "Stock", [headings, ...cells]);
    standIn.book.selected = [place];
    standIn.book.answer = () => 106;
    return standIn;
  };

  describe.each(["Manual", "AutomaticExceptTables"] as const)("with calculation set to %s", (calculationMode) => {
    it.each(ways)("are calculated before %s is read, in two calls", async (_, read, more = 0) => {
      const standIn = withFormula(100);
      standIn.book.calculationMode = calculationMode;
      expect(await read(new ExcelHost())).toEqual([["Tin", 106]]);
      expect(standIn.syncs).toBe(2 + more);
    });
  });

  it("take as many calls with 1,000 rows", async () => {
    const standIn = withFormula(100, 1000);
    standIn.book.calculationMode = "Manual";
    const { rows } = await new ExcelHost().read({ name: "Vessels", place, headings });
    expect(rows).toEqual(Array(1000).fill(["Tin", 106]));
    expect(standIn.syncs).toBe(2);
  });

  it.each(ways)(
    "are not asked for where Excel calculates by itself: %s is read in one call",
    async (_, read, more = 0) => {
      const standIn = withFormula(100);
      expect(await read(new ExcelHost())).toEqual([["Tin", 100]]);
      expect(standIn.syncs).toBe(1 + more);
    },
  );

  it.each(ways)("are waited for while they show #BUSY! in %s", async (_, read, more = 0) => {
    vi.useFakeTimers();
    const standIn = withFormula("#BUSY!");
    standIn.meanwhile = (sync) => {
      if (sync === 3) standIn.book.calculate();
    };
    const rows = read(new ExcelHost());
    await vi.runAllTimersAsync();
    expect(await rows).toEqual([["Tin", 106]]);
    expect(standIn.syncs).toBe(3 + more);
  });

  it.each(ways)("are never given as they are: without end in sight %s is not read", async (_, read) => {
    const standIn = withFormula("#BUSY!");
    await expect(read(new ExcelHost([0, 0, 0]))).rejects.toThrow(new StillCalculating());
    expect(standIn.syncs).toBe(4);
  });

  it.each([
    ["Calculating", "Automatic", 5],
    ["Pending", "Automatic", 5],
    ["Calculating", "Manual", 6],
  ] as const)("are waited for while Excel says %s, with calculation set to %s", async (state, mode, syncs) => {
    const standIn = withFormula(106);
    Object.assign(standIn.book, { calculationState: state, calculationMode: mode });
    await expect(new ExcelHost([0, 0, 0, 0]).readSheet("Stock")).rejects.toThrow(StillCalculating);
    expect(standIn.syncs).toBe(syncs);
    standIn.meanwhile = (sync) => {
      if (sync === syncs + 2) standIn.book.calculationState = "Done";
    };
    expect((await new ExcelHost([0, 0, 0, 0]).readSheet("Stock"))[1]).toEqual(["Tin", 106]);
  });

  it("may be pending for good where the user has Excel calculate", async () => {
    const standIn = withFormula(100);
    Object.assign(standIn.book, { calculationState: "Pending", calculationMode: "Manual" });
    expect((await new ExcelHost([0]).readSheet("Stock"))[1]).toEqual(["Tin", 106]);
    expect(standIn.syncs).toBe(2);
  });

  it("may be a text that looks so", async () => {
    const standIn = excel();
    standIn.sheet("Stock", [headings, ["Tin", "'#BUSY!"]]);
    expect((await new ExcelHost().read({ name: "", place, headings })).rows).toEqual([["Tin", "#BUSY!"]]);
    expect(standIn.syncs).toBe(1);
  });
});

describe("showing a cell", () => {
  it("goes to its sheet and selects it", async () => {
    const standIn = excel();
    standIn.sheet("One");
    standIn.sheet("Two");
    await host.select({ sheet: "Two", row: 4, column: 2, rows: 1, columns: 1 });
    expect(standIn.book.active).toBe(1);
    expect(standIn.book.selected).toMatchObject([{ row: 4, column: 2 }]);
    expect(standIn.syncs).toBe(1);
  });
});

describe("settings", () => {
  it("are null at first and come back as they were kept", async () => {
    const standIn = excel();
    expect(await host.settings()).toBeNull();
    const settings = { load: 0.06, basis: "of wax", columns: { Vessel: 0 }, none: null, text: "=1+1 «שעווה»" };
    await host.keepSettings(settings);
    expect(await host.settings()).toEqual(settings);
    await host.keepSettings({ load: 0.08 });
    expect(await host.settings()).toEqual({ load: 0.08 });
    expect(standIn.syncs).toBe(5);
    expect([...standIn.book.settings.keys()]).toEqual(["pourwright"]);
  });

  it("that are damaged are set aside with a word, and new ones can be kept", async () => {
    const standIn = excel();
    standIn.book.settings.set("pourwright", '{"load": 0.06');
    await expect(host.settings()).rejects.toThrow(new DamagedSettings());
    expect([...standIn.book.settings]).toEqual([["pourwright damaged", '{"load": 0.06']]);
    expect(await host.settings()).toBeNull();
    await host.keepSettings({ load: 0.08 });
    expect(await host.settings()).toEqual({ load: 0.08 });
  });

  it("may have keys that are names of the language's own", async () => {
    excel();
    const settings = JSON.parse('{"columns": {"__proto__": "constructor", "constructor": {"__proto__": 1}}}');
    await host.keepSettings(settings);
    expect(JSON.stringify(await host.settings())).toBe(JSON.stringify(settings));
  });

  it("that are too long are refused", async () => {
    excel();
    await expect(host.keepSettings("x".repeat(2e6))).rejects.toThrow("too long");
  });
});

/** How many are told of something. */
const listeners = ({ book }: StandIn): number => [...book.told.values()].reduce((sum, count) => sum + count, 0);

describe("changes", () => {
  const EVENTS = [
    "worksheets.onChanged",
    "worksheets.onAdded",
    "worksheets.onDeleted",
    "worksheets.onRowSorted",
    "worksheets.onColumnSorted",
    "worksheets.onNameChanged",
    "worksheets.onRowHiddenChanged",
    "worksheets.onActivated",
    "worksheets.onCalculated",
    "tables.onAdded",
    "tables.onDeleted",
  ];

  /** An Excel that knows them all. */
  const today = (): StandIn => new StandIn({ knows: everything }).install();

  it("call back until stopped, and the listeners are taken off", async () => {
    const standIn = today();
    const heard = vi.fn();
    const stop = new ExcelHost().onChange(heard);
    await expect.poll(() => standIn.syncs).toBe(EVENTS.length);
    for (const event of EVENTS) await standIn.fire(event);
    expect(heard).toHaveBeenCalledTimes(EVENTS.length);
    stop();
    await standIn.fire("worksheets.onChanged");
    expect(heard).toHaveBeenCalledTimes(EVENTS.length);
    await expect.poll(() => standIn.syncs).toBe(2 * EVENTS.length);
    expect(listeners(standIn)).toBe(0);
  });

  it("can be stopped before Excel has answered, and Excel may refuse", async () => {
    const standIn = today();
    const heard = vi.fn();
    new ExcelHost().onChange(heard)();
    await expect.poll(() => standIn.syncs).toBe(2 * EVENTS.length);
    for (const event of EVENTS) await standIn.fire(event);
    expect(heard).not.toHaveBeenCalled();
    standIn.failure = { sync: 2 * EVENTS.length + 1, done: "nothing" };
    new ExcelHost().onChange(heard)();
    await expect.poll(() => standIn.syncs).toBe(4 * EVENTS.length - 1);
    expect(heard).not.toHaveBeenCalled();
  });

  it.each(EVENTS)("are still heard by the others in an Excel that does not know %s", async (unknown) => {
    const standIn = today();
    standIn.book.unknown.add(unknown);
    const heard = vi.fn();
    const stop = new ExcelHost().onChange(heard);
    await expect.poll(() => standIn.syncs).toBe(EVENTS.length);
    for (const event of EVENTS) await standIn.fire(event);
    expect(heard).toHaveBeenCalledTimes(EVENTS.length - 1);
    stop();
    await expect.poll(() => standIn.syncs).toBe(2 * EVENTS.length - 1);
    expect(listeners(standIn)).toBe(0);
  });

  it("are heard as far as the oldest Excel tells of them", async () => {
    const standIn = excel();
    const heard = vi.fn();
    const stop = new ExcelHost().onChange(heard);
    const late = ["onRowSorted", "onColumnSorted", "onNameChanged", "onRowHiddenChanged"];
    await expect.poll(() => standIn.syncs).toBe(EVENTS.length - late.length);
    for (const event of EVENTS) await standIn.fire(event);
    expect(heard).toHaveBeenCalledTimes(EVENTS.length - late.length);
    expect(standIn.lacking).toEqual(new Set(late.map((event) => `WorksheetCollection.${event}`)));
    stop();
    await expect.poll(() => listeners(standIn)).toBe(0);
  });

  it("do not come of reading them where reading has Excel calculate", async () => {
    const standIn = today();
    standIn.table("Vessels", "Stock", [headings, ["Tin", "=POUR.FILLWEIGHT(120)"]]);
    standIn.book.calculationMode = "Manual";
    const host = new ExcelHost();
    let times = 0;
    const stop = host.onChange(() => {
      if (++times < 10) void host.read({ name: "Vessels", place, headings });
    });
    await expect.poll(() => standIn.syncs).toBe(EVENTS.length);
    await standIn.fire("worksheets.onChanged");
    await expect.poll(() => standIn.syncs).toBe(EVENTS.length + 2);
    await new Promise((resolve) => setTimeout(resolve, 20));
    expect(times).toBe(1);
    stop();
  });
});

describe("what goes wrong is said in words to act on", () => {
  it.each([
    ["AccessDenied", "protected"],
    ["InvalidOperationInCellEditMode", "Press Enter or Esc"],
    ["ResponsePayloadSizeLimitExceeded", "fewer rows"],
    ["GeneralException", "Office says GeneralException. (GeneralException). Try again."],
  ])("%s", async (code, words) => {
    const standIn = excel();
    standIn.failure = { sync: 1, done: "nothing", code };
    await expect(host.sheetNames()).rejects.toThrow(words);
    standIn.failure = { sync: 2, done: "nothing", code };
    await expect(host.sheetNames()).rejects.toThrow("Excel could not list the sheets");
  });
});

import { afterEach, describe, expect, it, vi } from "vitest";
import { ExcelHost } from "../../../src/host/excel/adapter";
import { buildRun } from "../../../src/runsheet/buildRun";
import { isError } from "../../../src/runsheet/problem";
import { FIRST_SETTINGS } from "../../../src/runsheet/settings";
import { describeRun } from "../../../src/runsheet/sheet/describeRun";
import { AT } from "../../../src/runsheet/sheet/layout";
import type { Cell, CellValue, Sheet } from "../../../src/sheet/sheet";
import { LINE } from "../../../src/sheet/styles";
import { HOSTILE_NAMES, HOSTILE_TEXTS } from "../../hostileTexts";
import type { SheetModel } from "./model";
import { type Failure, StandIn } from "./standIn";

afterEach(() => vi.unstubAllGlobals());

const excel = (): StandIn => {
  const standIn = new StandIn().install();
  standIn.table("Vessels", "Stock", [
    ["Vessel", "Water"],
    ["Tin", 120],
    ["Jar", 200],
  ]);
  standIn.sheet("Notes", [["Only mine", "'=kept"]]);
  standIn.book.names.push("Markup");
  standIn.book.active = 0;
  return standIn;
};

/** A sheet with everything a sheet can have, and as many rows as wanted. */
function sheetOf(rows: number): Sheet {
  const cells: Cell[] = [
    { row: 0, column: 0, content: { text: "Pour" }, look: "title", across: 3 },
    { row: 1, column: 0, content: { text: "A note that runs on and on. ".repeat(9) }, look: "note", across: 3 },
    ...["Vessel", "Fill", "Poured"].map(
      (text, column): Cell => ({ row: 2, column, content: { text }, look: "heading" }),
    ),
  ];
  for (let i = 0; i < rows; i++) {
    const row = 3 + i;
    cells.push({ row, column: 0, content: { text: `=Vessel ${i}` } });
    cells.push({ row, column: 1, content: { formula: `=Pour[[#This Row],[Poured]]*${i}` }, format: "0.00" });
    cells.push({ row, column: 2, look: i % 2 ? "blank" : "input", align: "right" });
  }
  cells.push({ row: 3 + rows, column: 1, content: { number: 0.1 + 0.2 }, look: "total" });
  return {
    name: "Run sheet",
    widths: [24, 10, 10],
    cells,
    tables: [{ name: "Pour", row: 2, column: 0, headings: ["Vessel", "Fill", "Poured"], rows }],
    frozenRows: 3,
    print: { paper: "a4", landscape: true, repeatRows: [0, 2] },
  };
}

const named = (standIn: StandIn, name: string): SheetModel => standIn.book.find(name) as SheetModel;

describe("adding a sheet", () => {
  it("calls Excel as often for 1, 100 and 1,000 rows: four times", async () => {
    const counts: number[] = [];
    for (const rows of [1, 100, 1000]) {
      const standIn = excel();
      await new ExcelHost().addSheet(sheetOf(rows));
      counts.push(standIn.syncs);
      expect(Math.max(...standIn.requests)).toBeLessThan(1e6);
      expect(named(standIn, "Run sheet").cells.size).toBe(5 + 2 * rows + 1);
    }
    expect(counts).toEqual([4, 4, 4]);
  });

  it("writes contents, tables and formulas", async () => {
    const standIn = excel();
    expect(await new ExcelHost().addSheet(sheetOf(2))).toBe("Run sheet");
    const sheet = named(standIn, "Run sheet");
    expect(sheet.cell(0, 0)).toEqual({ formula: null, value: "Pour", type: "String" });
    expect(sheet.cell(3, 0)?.value).toBe("=Vessel 0");
    expect(sheet.cell(4, 1)?.formula).toBe("=Pour[[#This Row],[Poured]]*1");
    expect(sheet.cell(4, 2)).toBeUndefined();
    expect(sheet.cell(5, 1)?.value).toBe(0.1 + 0.2);
    expect(sheet.tables).toMatchObject([{ name: "Pour", area: { row: 2, column: 0, rows: 3, columns: 3 } }]);
  });

  it("has the formulas calculated, which it suspended while it wrote", async () => {
    const standIn = excel();
    standIn.book.answer = () => 7;
    await new ExcelHost().addSheet(sheetOf(2));
    expect([3, 4].map((row) => named(standIn, "Run sheet").cell(row, 1)?.value)).toEqual([7, 7]);
    expect(standIn.syncs).toBe(4);
  });

  it("draws the looks, sizes, freezes and sets up the print", async () => {
    const standIn = excel();
    await new ExcelHost().addSheet(sheetOf(4));
    const sheet = named(standIn, "Run sheet");
    expect(sheet.look(0, 2)).toMatchObject({ "font.bold": true, "font.size": 16 });
    expect(sheet.look(2, 1)).toMatchObject({ "fill.color": "#E8E2D6", "border.bottom.style": "Continuous" });
    expect(sheet.look(2, 1)).not.toHaveProperty("border.top.style");
    expect(sheet.look(3, 1)).toMatchObject({ numberFormat: "0.00" });
    for (const row of [3, 4, 5, 6]) {
      for (const side of ["top", "bottom", "left", "right"]) {
        expect(sheet.look(row, 2)).toHaveProperty([`border.${side}.style`], "Continuous");
        expect(sheet.look(row, 2)).toHaveProperty([`border.${side}.color`], `#${LINE}`);
      }
      expect(sheet.look(row, 2)).toMatchObject({ horizontalAlignment: "Right" });
      expect(sheet.look(row, 0)).toEqual({});
    }
    expect(sheet.merges).toEqual(["0,0 2x3 true"]);
    // 24 characters of 7 pixels and 5 of padding, 96 pixels an inch, 72 points an inch.
    expect(sheet.widths).toEqual(
      new Map([
        [0, 129.75],
        [1, 56.25],
        [2, 56.25],
      ]),
    );
    // 252 characters in three columns of 44 together: at least six lines of 15 points.
    expect(sheet.heights.get(1)).toBeGreaterThanOrEqual(90);
    expect(sheet.frozenRows).toBe(3);
    expect(sheet.page).toEqual({
      paperSize: "A4",
      orientation: "Landscape",
      zoom: { horizontalFitToPages: 1 },
      leftFooter: "&A",
      rightFooter: "Page &P of &N",
      titleRows: "$1:$3",
    });
    expect(standIn.book.sheets[standIn.book.active]).toBe(sheet);
  });

  it("hides the columns whose width is 0, and no other", async () => {
    const standIn = excel();
    const cells: Cell[] = [{ row: 3, column: 1, content: { text: "1 wax" } }];
    await new ExcelHost().addSheet({ name: "Keys", widths: [10, 0, 12, 0], cells });
    expect(named(standIn, "Keys").hidden).toEqual(new Set([1, 3]));
    expect([...named(standIn, "Keys").widths.keys()]).toEqual([0, 2]);
    expect(named(standIn, "Keys").cell(3, 1)?.value).toBe("1 wax");
  });

  it("tells how far it is, from nothing to all", async () => {
    excel();
    const shares: number[] = [];
    await new ExcelHost().addSheet(sheetOf(5), { onProgress: (share) => shares.push(share) });
    expect(shares.length).toBeGreaterThan(3);
    expect(shares).toEqual([...new Set(shares)].sort((a, b) => a - b));
    expect([shares[0], shares.at(-1)]).toEqual([0, 1]);
  });

  it("gives every cell of a bordered block all its lines", async () => {
    const standIn = excel();
    const cells = Array.from(
      { length: 12 },
      (_, i): Cell => ({ row: i % 4, column: Math.floor(i / 4), look: "blank" }),
    );
    await new ExcelHost().addSheet({ name: "Grid", widths: [], cells });
    for (const { row, column } of cells) {
      expect(
        Object.keys(named(standIn, "Grid").look(row, column)).filter((key) => key.endsWith(".style")),
      ).toHaveLength(4);
    }
  });

  it.each([...HOSTILE_TEXTS, "''", "x".repeat(32_766), "two\nlines", " "])(
    "writes %j as the text it is",
    async (text) => {
      const standIn = excel();
      const cell: Cell = { row: 2, column: 1, content: { text } };
      const heading: Cell = { row: 1, column: 1, content: { text: `${text.slice(0, 200)}h` } };
      await new ExcelHost().addSheet({
        name: "Text",
        widths: [],
        cells: [heading, cell],
        tables: [{ name: "Texts", row: 1, column: 1, headings: [`${text}h`], rows: 1 }],
      });
      expect(named(standIn, "Text").cell(2, 1)).toEqual({ formula: null, value: text, type: "String" });
      expect(named(standIn, "Text").cell(1, 1)).toMatchObject({ formula: null, type: "String" });
    },
  );

  it("leaves an empty text empty", async () => {
    const standIn = excel();
    await new ExcelHost().addSheet({ name: "Text", widths: [], cells: [{ row: 0, column: 0, content: { text: "" } }] });
    expect(named(standIn, "Text").cells.size).toBe(0);
  });

  it("never takes a name that is there, in whatever capitals", async () => {
    const standIn = excel();
    const before = standIn.book.snapshot();
    const host = new ExcelHost();
    const sheet = { ...sheetOf(1), tables: [], cells: [] };
    expect(await host.addSheet({ ...sheet, name: "NOTES" })).toBe("NOTES (2)");
    expect(await host.addSheet({ ...sheet, name: "notes" })).toBe("notes (3)");
    expect(await host.addSheet({ ...sheet, name: "'2026/11/26: pour'" })).toBe("2026 11 26 pour");
    expect(await host.sheetNames()).toEqual(["Stock", "Notes", "NOTES (2)", "notes (3)", "2026 11 26 pour"]);
    standIn.book.sheets.splice(2);
    standIn.book.active = 0;
    expect(standIn.book.snapshot()).toEqual(before);
  });
});

describe("what Excel could not hold is refused before anything is written", () => {
  const refused = async (sheet: Partial<Sheet>, message: string | RegExp): Promise<void> => {
    const standIn = excel();
    const before = standIn.book.snapshot();
    await expect(new ExcelHost().addSheet({ name: "X", widths: [], cells: [], ...sheet })).rejects.toThrow(message);
    expect(standIn.book.snapshot()).toEqual(before);
    expect(standIn.syncs).toBeLessThan(2);
  };
  const one = (content: Cell["content"]): Partial<Sheet> => ({
    cells: [{ row: 6, column: 1, content: content as never }],
  });

  it("a text longer than a cell", () =>
    refused(one({ text: "y".repeat(32_767) }), /Cell B7 would hold 32,767 char.*"yyy/));
  it("a number that is none", () => refused(one({ number: Number.NaN }), "Cell B7 would hold NaN"));
  it("a formula without its sign", () => refused(one({ formula: "1+1" }), "The formula of cell B7"));
  it("a formula longer than Excel's", () => refused(one({ formula: `=${"1+".repeat(5000)}1` }), "too long"));
  it("a row longer than what Excel takes at once", () => {
    const cells = Array.from(
      { length: 200 },
      (_, column): Cell => ({ row: 0, column, content: { text: "z".repeat(30_000) } }),
    );
    return refused({ cells }, /6\.0 MB.*shorten the longest texts/);
  });
  it.each(["VESSELS", "MARKUP"])("a table whose name %s is taken, by a table or a named range", (name) =>
    refused({ tables: [{ name, row: 0, column: 0, headings: ["a"], rows: 1 }] }, `already has something named ${name}`),
  );
  it("a sheet in a protected workbook", async () => {
    const standIn = excel();
    standIn.book.protected = true;
    await expect(new ExcelHost().addSheet(sheetOf(1))).rejects.toThrow("protected, so no sheet can be added");
    expect(standIn.book.sheets).toHaveLength(2);
  });
});

describe("a failure leaves the workbook as it was", () => {
  const failures = [1, 2, 3].flatMap((sync) =>
    (["nothing", "half", "all"] as const).map((done): Failure => ({ sync, done, code: "GeneralException" })),
  );
  it.each(failures)("at call $sync with $done of it done", async (failure) => {
    const standIn = excel();
    const before = standIn.book.snapshot();
    standIn.failure = failure;
    await expect(new ExcelHost().addSheet(sheetOf(40))).rejects.toThrow("Excel could not add the sheet");
    expect(standIn.book.snapshot()).toEqual(before);
  });

  it("when a command in the middle is refused", async () => {
    const standIn = excel();
    const before = standIn.book.snapshot();
    const sheet = sheetOf(3);
    const formula: Cell = { row: 9, column: 0, content: { formula: "=Nowhere[Fill]" } };
    await expect(new ExcelHost().addSheet({ ...sheet, cells: [...sheet.cells, formula] })).rejects.toThrow(
      "Excel could not add the sheet",
    );
    expect(standIn.book.snapshot()).toEqual(before);
  });

  it("when somebody else takes the name at the same moment, and theirs stays", async () => {
    const standIn = excel();
    standIn.book.answer = () => {
      if (!standIn.book.find("Run sheet")) standIn.sheet("Run sheet", [["theirs"]]);
      return 1;
    };
    await expect(new ExcelHost().addSheet(sheetOf(1))).rejects.toThrow("taken in the meantime");
    expect(await new ExcelHost().sheetNames()).toEqual(["Stock", "Notes", "Run sheet"]);
    expect(named(standIn, "Run sheet").cell(0, 0)?.value).toBe("theirs");
  });

  it("and says so when the unfinished sheet cannot be taken away", async () => {
    const standIn = excel();
    standIn.meanwhile = (sync) => {
      if (sync === 3) standIn.book.protected = true;
    };
    standIn.failure = { sync: 3, done: "all" };
    await expect(new ExcelHost().addSheet(sheetOf(1))).rejects.toThrow("delete it yourself");
  });
});

describe("what is too much for one request", () => {
  /** So many rows of a formula of 7,800 characters. */
  const long = (rows: number): Sheet => {
    const content = { formula: `=${"1+".repeat(3900)}1` };
    return { name: "Long", widths: [], cells: Array.from({ length: rows }, (_, row) => ({ row, column: 0, content })) };
  };

  it.each([
    [900, 3],
    [2000, 5],
  ])("goes in as many as it takes: %i long formulas", async (rows, calls) => {
    const standIn = excel();
    standIn.book.answer = () => 7;
    await new ExcelHost().addSheet(long(rows));
    const cells = [...named(standIn, "Long").cells.values()];
    expect(cells).toEqual(Array(rows).fill({ formula: `=${"1+".repeat(3900)}1`, value: 7, type: "Double" }));
    // Excel on the web takes 5 MB in one request.
    expect(Math.max(...standIn.requests)).toBeLessThan(5_000_000);
    expect(standIn.syncs).toBe(calls);
  });

  it("looks the same as what goes in one", async () => {
    const looks = ["input", "body", "label"] as const;
    const of = (text: string): Sheet => ({
      name: "Looks",
      widths: [12, 12, 12],
      heights: { 0: 40, 30: 30 },
      cells: Array.from({ length: 400 }, (_, row): Cell[] => [
        { row, column: 0, across: 2, content: { text }, look: looks[(row >> 6) % 3] },
        { row, column: 2, content: { number: row }, format: "0.0", look: looks[(row >> 5) % 3], align: "center" },
      ]).flat(),
    });
    const added = async (text: string) => {
      const standIn = excel();
      await new ExcelHost().addSheet(of(text));
      const { looks, widths, heights, merges } = named(standIn, "Looks");
      // Cells of neighbouring rows that are merged by one command or by two.
      const rows = merges.reduce((sum, one) => sum + Number(/ (\d+)x2 /.exec(one)?.[1]), 0);
      return { syncs: standIn.syncs, looks: { looks, widths, heights, rows } };
    };
    const [one, many] = [await added("z"), await added("z".repeat(30_000))];
    expect(many.syncs).toBeGreaterThan(one.syncs);
    expect(many.looks).toEqual(one.looks);
  });

  it.each<Failure>([
    { sync: 2, done: "all" },
    { sync: 3, done: "half" },
    { sync: 4, done: "all" },
    { sync: 5, done: "half" },
    { sync: 5, done: "all" },
  ])("leaves nothing behind when call $sync fails with $done of it done", async (failure) => {
    const standIn = excel();
    const before = standIn.book.snapshot();
    standIn.failure = failure;
    await expect(new ExcelHost().addSheet(long(2000))).rejects.toThrow("Excel could not add the sheet");
    expect(standIn.book.snapshot()).toEqual(before);
  });

  it("leaves nothing behind when it is stopped between two", async () => {
    const standIn = excel();
    const before = standIn.book.snapshot();
    const stop = new AbortController();
    standIn.meanwhile = (sync) => sync === 3 && stop.abort();
    await expect(new ExcelHost().addSheet(long(2000), { signal: stop.signal })).rejects.toThrow("aborted");
    expect(standIn.book.snapshot()).toEqual(before);
  });

  it("is refused where only one is to be had", async () => {
    const standIn = excel();
    const before = standIn.book.snapshot();
    await expect(new ExcelHost().append([long(900)])).rejects.toThrow(/7\.\d MB, more than Excel takes.*fewer rows/);
    expect(standIn.book.snapshot()).toEqual(before);
  });
});

describe("a stop leaves the workbook as it was", () => {
  /** What a stopped call rejects with is the stop itself: nothing else went wrong. */
  const stopped = async (work: Promise<string>, { signal }: AbortController): Promise<void> => {
    const error = await work.catch((fault: unknown) => fault);
    expect(signal.aborted).toBe(true);
    expect(error).toBe(signal.reason);
  };

  it("before anything is asked", async () => {
    const standIn = excel();
    const signal = AbortSignal.abort();
    await expect(new ExcelHost().addSheet(sheetOf(3), { signal })).rejects.toBe(signal.reason);
    expect(standIn.syncs).toBe(0);
  });

  it.each([1, 2])("while call %i is under way", async (call) => {
    const standIn = excel();
    const before = standIn.book.snapshot();
    const stop = new AbortController();
    standIn.meanwhile = (sync) => sync === call && stop.abort();
    await stopped(new ExcelHost().addSheet(sheetOf(40), { signal: stop.signal }), stop);
    expect(standIn.book.snapshot()).toEqual(before);
  });

  it.each([0, 0.1, 0.8])("when it is heard at the share %d", async (at) => {
    const standIn = excel();
    const before = standIn.book.snapshot();
    const stop = new AbortController();
    const onProgress = (share: number): void => {
      if (share === at) stop.abort();
    };
    await stopped(new ExcelHost().addSheet(sheetOf(40), { signal: stop.signal, onProgress }), stop);
    expect(standIn.book.snapshot()).toEqual(before);
  });

  it("but once the sheet gets its name and is shown, it stays", async () => {
    const standIn = excel();
    const stop = new AbortController();
    standIn.meanwhile = (sync) => sync === 3 && stop.abort();
    expect(await new ExcelHost().addSheet(sheetOf(3), { signal: stop.signal })).toBe("Run sheet");
    expect(named(standIn, "Run sheet").cells.size).toBe(5 + 2 * 3 + 1);
  });

  it("and says so when the unfinished sheet cannot be taken away", async () => {
    const standIn = excel();
    const stop = new AbortController();
    standIn.meanwhile = (sync) => {
      if (sync === 2) stop.abort();
      if (sync > 2) standIn.book.protected = true;
    };
    const work = new ExcelHost().addSheet(sheetOf(3), { signal: stop.signal });
    await expect(work).rejects.toThrow(
      "Stopped. An unfinished sheet may be left at the end of the workbook; delete it",
    );
  });
});

describe("a run sheet for 1,000 rows of vessels", () => {
  const rows = Array.from({ length: 1000 }, (_, i): CellValue[] => {
    const scent = ["Cedar", "=Fig", "@Pine", ""][i % 4] as string;
    return [HOSTILE_NAMES[i] ?? `Vessel ${i}`, 1 + (i % 5), 80 + (i % 90), scent, scent && 0.06];
  });
  const columns = { vessel: 0, quantity: 1, fill: 2, scent: 3, load: 4 };
  const settings = { ...FIRST_SETTINGS, potCapacity: 20_000 };
  const run = buildRun({ pour: { type: "pour", headings: [], rows, columns } }, settings);

  it.each([true, false])("goes into Excel in four calls, live: %s, and every name is the text it was", async (live) => {
    expect(run.problems.filter(isError)).toEqual([]);
    const standIn = excel();
    const host = new ExcelHost();
    const sheet = describeRun(run, { lot: "2026-330-01", date: 46_352, settings: { ...settings, live } });
    const name = await host.addSheet(sheet);
    expect(standIn.syncs).toBe(4);
    // Excel on the web takes 5 MB in one request.
    expect(Math.max(...standIn.requests)).toBeLessThan(5 * 1024 * 1024);
    expect(named(standIn, name).hidden).toEqual(new Set([AT.remark, AT.loadRemark, AT.thing, AT.key]));

    const read = await host.readSheet(name);
    expect(standIn.syncs).toBe(5);
    const vessels = read.filter((row) => /^\d+ vessel$/.test(String(row[AT.key]))).map(([vessel]) => vessel);
    expect(new Set(vessels)).toEqual(new Set(rows.map(([vessel]) => vessel)));
    const texts = sheet.cells.filter(({ content }) => content && "text" in content);
    for (const { row, column, content } of texts) {
      const { text } = content as { text: string };
      const cell = named(standIn, name).cell(row, column);
      if (text !== "") expect(cell).toEqual({ formula: null, value: text, type: "String" });
    }
  });
});

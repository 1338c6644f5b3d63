import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { runCandles } from "../../../src/runsheet/record/runCandles";
import { type Recall, type RunCandles, Trace } from "../../../src/runsheet/stock/trace";
import { contentsSheet, doubtLines, recallSheet } from "../../../src/runsheet/stock/traceSheets";
import { LOG_COLUMNS } from "../../../src/runsheet/tables/runsLog";
import type { CellValue, Sheet } from "../../../src/sheet/sheet";
import { readLog } from "../record/logs";
import { DAY, movesOf } from "./moved";

const candles = (
  run: string,
  date: number,
  count: number,
  good: number | undefined,
  pots?: readonly string[],
): RunCandles => ({
  ...{ run, date, scent: "Fig", vessel: "Tin", pots, candles: count, good },
});
const LOG = [
  candles("2026-340-01", DAY + 10, 12, 11),
  candles("2026-341-01", DAY + 11, 6, undefined),
  candles("2026-342-01", DAY + 12, 8, 8),
];
const MOVES: CellValue[][] = [
  [DAY, "Fig oil", "F-7", 1000, 60, DAY + 400, null, "by post"],
  [DAY + 1, "Fig oil", "F-8", 500, 30],
  [DAY + 11, "Fig oil", "f-7", -50.5, null, null, "2026-341-01"],
  [DAY + 10, "fig oil", "F-7 ", -100, null, null, "2026-340-01"],
  [DAY + 10, "Fig oil", "F-7", 4.5, null, null, "2026-340-01", "written twice"],
  [DAY + 12, "Fig oil", null, -60, null, null, "2026-342-01"],
  [DAY + 13, "Fig oil", "F-7", -20, null, null, null, "spilt"],
  [DAY + 14, "Fig oil", "F-7", -30, null, null, "2026-343-01"],
  [DAY + 14, "Fig oil", "F-7", 30, null, null, "2026-343-01", "was F-8"],
  [DAY + 14, "Fig oil", "F-8", -30, null, null, "2026-343-01"],
  [DAY + 10, "Tin", "T", -12, null, null, "2026-340-01"],
];
const trace = () => new Trace(movesOf(MOVES), LOG);

describe("from a lot to the candles", () => {
  it("gives the runs that took of it, with their candles, and where else it went", () => {
    const recall = trace().recall("FIG oil", " F-7");
    expect(recall).toMatchObject({ item: "Fig oil", lot: "F-7", left: 1000 - 50.5 - 95.5 - 20 });
    expect(recall?.cameIn.map(({ row }) => row)).toEqual([0]);
    // 100 less the 4.5 that a correction gave back; what was taken back as a whole is no use of it.
    expect(recall?.runs).toEqual([
      { run: "2026-340-01", date: DAY + 10, used: 95.5, candles: [LOG[0]], doubt: undefined },
      { run: "2026-341-01", date: DAY + 11, used: 50.5, candles: [LOG[1]], doubt: undefined },
    ]);
    expect(recall?.elsewhere.map(({ note }) => note)).toEqual(["spilt"]);
    expect(recall?.unsure.map(({ run }) => run)).toEqual(["2026-342-01"]);
  });

  it("gives a run that the log does not know, and nothing of a lot that no move names", () => {
    expect(trace().recall("Fig oil", "F-8")?.runs).toEqual([
      { run: "2026-343-01", date: DAY + 14, used: 30, candles: [], doubt: undefined },
    ]);
    expect(trace().recall("Fig oil", "F-9")).toBeUndefined();
    expect(trace().recall("Moss oil", "F-7")).toBeUndefined();
  });

  it("finds the same as going through all rows for it", () => {
    const row = fc.tuple(
      fc.constantFrom("Wax", "Oil"),
      fc.constantFrom("A", "B", ""),
      fc.integer({ min: -900, max: 900 }),
      fc.constantFrom("", "R1", "R2", "R3"),
    );
    fc.assert(
      fc.property(fc.array(row, { maxLength: 30 }), (rows) => {
        const made = new Trace(
          movesOf(rows.map(([item, lot, change, run]) => [DAY, item, lot, change, null, null, run])),
          [],
        );
        for (const [item, lot] of rows) {
          const own = rows.filter((one) => one[0] === item && one[1] === lot);
          const used = ["R1", "R2", "R3"].flatMap((run) => {
            const sum = own.filter((one) => one[3] === run).reduce((total, one) => total - one[2], 0);
            return sum === 0 ? [] : [[run, sum]];
          });
          const recall = made.recall(item, lot);
          expect(recall?.runs.map((one) => [one.run, one.used]).sort()).toEqual(used);
          // Whatever a recall names, the contents of that run name it too.
          for (const { run, used } of recall?.runs ?? []) {
            expect(made.contents(run)?.parts).toContainEqual(expect.objectContaining({ item, lot, used }));
          }
        }
      }),
      { numRuns: 200 },
    );
  });
});

describe("a lot that is written with others as one", () => {
  const RUN = "2026-340-01";
  const both = (lot: string) =>
    new Trace(movesOf([[DAY + 10, "Wax", lot, -900, null, null, RUN, "all pots"]]), LOG).recall("Wax", "S-1");

  it("may be in what took of these, whether or not a move names it alone", () => {
    for (const lot of ["S-1, S-2", "S-2 and s-1", "S-2/S-1/S-3", "S-2 S-1", "S-2\nS-1"]) {
      const recall = both(lot);
      expect(recall, lot).toMatchObject({ item: "Wax", lot: "S-1", cameIn: [], runs: [], left: 0, among: [lot] });
      expect(recall?.unsure, lot).toEqual([
        { run: RUN, date: DAY + 10, used: 900, candles: [LOG[0]], doubt: undefined, lot },
      ]);
    }
    for (const lot of ["S-10, S-2", "S-11", "S-2"]) expect(both(lot), lot).toBeUndefined();
    const alone: CellValue[] = [DAY, "Wax", "S-1", 5000];
    const joined: CellValue[] = [DAY + 10, "Wax", "S-1, S-2", -900, null, null, RUN];
    const recall = new Trace(movesOf([alone, joined]), LOG).recall("Wax", "S-1");
    expect(recall?.cameIn).toHaveLength(1);
    expect(recall?.unsure.map(({ run }) => run)).toEqual([RUN]);
  });

  it("is found as it is written too", () => {
    const joined: CellValue[] = [DAY + 10, "Wax", "S-1, S-2", -900, null, null, RUN];
    const recall = new Trace(movesOf([joined]), LOG).recall("Wax", "s-1, s-2");
    expect(recall).toMatchObject({ runs: [{ run: RUN }], among: [], unsure: [] });
  });
});

describe("a run that took of a lot and of what has none", () => {
  const RUN = "2026-340-01";
  const log = [candles(RUN, DAY, 5, 5, ["A"]), candles(RUN, DAY, 6, 6, ["B"])];
  const recalled = (...uses: [lot: string | null, note: string][]) =>
    new Trace(movesOf(uses.map(([lot, note]) => [DAY, "Wax", lot, -5, null, null, RUN, note])), log).recall("Wax", "W");

  it("is named once, and of its other candles it is said that they may hold it", () => {
    expect(recalled(["W", "all pots"], [null, "all pots"])?.unsure).toEqual([]);
    expect(recalled(["W", "pots: A"], [null, "pots: A"])?.unsure).toEqual([]);
    const recall = recalled(["W", "pots: A"], [null, "all pots"]);
    expect(recall?.runs.map((one) => one.candles)).toEqual([[log[0]]]);
    expect(recall?.unsure.map((one) => one.candles)).toEqual([[log[1]]]);
  });
});

describe("the candles of the pots that took a lot", () => {
  const RUN = "2026-340-01";
  /** One run: five candles of pot A, six of B, and seven of C and D, which the log counts together. */
  const log = [candles(RUN, DAY, 5, 5, ["A"]), candles(RUN, DAY, 6, 6, ["B"]), candles(RUN, DAY, 7, 7, ["C", "D"])];
  /** How many candles are listed for moves of so much, each with its note, and what is said of them. */
  const listed = (moves: [change: number, note: string][], of = log) => {
    const rows = moves.map(([change, note]) => [DAY, "Wax", "W-1", change, null, null, RUN, note]);
    const recall = new Trace(movesOf(rows), of).recall("Wax", "W-1");
    if (!recall) throw new Error("no recall");
    return [recall.runs[0]?.candles.map((one) => one.candles), doubtLines(recall.runs).length];
  };

  it("are all where it went into all, and those of the pots that are named", () => {
    expect(listed([[-5, "all pots"]])).toEqual([[5, 6, 7], 0]);
    expect(listed([[-5, "pots: B"]])).toEqual([[6], 0]);
    expect(listed([[-5, "spilt a little; Pots: B; C;D"]])).toEqual([[6, 7], 0]);
    expect(
      listed([
        [-5, "pots: A"],
        [-5, "pots: B"],
      ]),
    ).toEqual([[5, 6], 0]);
  });

  it("are those of the pots that a correction left", () => {
    expect(
      listed([
        [-5, "pots: A"],
        [5, "correction, pots: A"],
        [-5, "correction, pots: B"],
        [1, "weighed too much"],
      ]),
    ).toEqual([[6], 0]);
  });

  it("are all, and that is said, where no pots are named, or none that the log knows", () => {
    expect(listed([[-5, ""]])).toEqual([[5, 6, 7], 1]);
    expect(listed([[-5, "pots: B, the small one"]])).toEqual([[5, 6, 7], 1]);
    expect(
      listed([
        [-5, "pots: A"],
        [-1, ""],
      ]),
    ).toEqual([[5, 6, 7], 1]);
    // As logs were before they named pots.
    expect(
      listed(
        [[-5, "pots: B"]],
        log.map((one) => ({ ...one, pots: undefined })),
      ),
    ).toEqual([[5, 6, 7], 1]);
    expect(listed([[-5, ""]], log.slice(0, 1))).toEqual([[5], 0]);
    // One row of the log, but two pots, of which one may have taken another lot.
    expect(listed([[-5, ""]], log.slice(2))).toEqual([[7], 1]);
  });

  it("are named with those of other pots that the log counts together, and that is said", () => {
    expect(listed([[-5, "pots: C"]])).toEqual([[7], 1]);
  });
});

describe("from a run to what went in", () => {
  it("gives each item and lot, with the day it came in and its best before", () => {
    expect(trace().contents(" 2026-340-01")).toEqual({
      run: "2026-340-01",
      candles: [LOG[0]],
      parts: [
        { item: "fig oil", lot: "F-7", used: 95.5, cameIn: DAY, bestBefore: DAY + 400 },
        { item: "Tin", lot: "T", used: 12, cameIn: undefined, bestBefore: undefined },
      ],
    });
    expect(trace().contents("2026-350-01")).toBeUndefined();
  });

  it("gives the candles of a run that no move names, and nothing that was given back as a whole", () => {
    const logged = new Trace(movesOf(MOVES.slice(0, 2)), LOG);
    expect(logged.contents("2026-341-01 ")).toEqual({ run: "2026-341-01", candles: [LOG[1]], parts: [] });
    expect(
      trace()
        .contents("2026-343-01")
        ?.parts.map(({ lot, used }) => [lot, used]),
    ).toEqual([["F-8", 30]]);
  });

  it("takes for the day a lot came in the first of those it came in on, and the best before written last", () => {
    const moves = movesOf([
      [DAY + 5, "Wax", "W", 10, null, DAY + 80],
      [DAY + 2, "Wax", "W", 10, null, DAY + 90],
      // Not received, but taken back from a run, and tested anew.
      [DAY, "Wax", "W", 1, null, null, "R-0"],
      [DAY + 9, "Wax", "W", 0, null, DAY + 50],
      [DAY + 9, "Wax", "W", 0, null, DAY + 60],
      [DAY + 9, "Wax", "W", -4, null, null, "R-1"],
    ]);
    expect(new Trace(moves, []).contents("R-1")?.parts).toEqual([
      { item: "Wax", lot: "W", used: 4, cameIn: DAY + 2, bestBefore: DAY + 60 },
    ]);
  });
});

describe("candles of the log", () => {
  it("leave out what a correction took back", () => {
    const headings = LOG_COLUMNS.map(({ heading }) => heading);
    const row = (cells: Readonly<Record<string, CellValue>>) => headings.map((heading) => cells[heading] ?? null);
    const logged = { Lot: "2026-340-01", Date: DAY, Scent: "Fig", Vessel: "Tin", Candles: 12, Good: 11 };
    const taken = { ...logged, Lot: "2026-341-01" };
    const rows = [row(logged), row(taken), row({ ...taken, Candles: -12, Good: -11 })];
    expect(runCandles(readLog({ headings, rows }))).toEqual([candles("2026-340-01", DAY, 12, 11)]);
  });
});

describe("the sheets of a trace", () => {
  const settings = { paper: "a4", unit: "g", today: DAY + 30 } as const;
  /** What stands in a sheet, row by row. */
  const lines = ({ cells }: Sheet) => {
    const rows: (string | number)[][] = [];
    for (const { row, column, content } of cells) {
      if (!content) continue;
      if ("formula" in content) throw new Error("a formula");
      rows[row] ??= [];
      (rows[row] as (string | number)[])[column] = "text" in content ? content.text : content.number;
    }
    return rows.map((row) => (row ?? []).filter((cell) => cell !== undefined).join(" | ")).filter((row) => row !== "");
  };

  it("list a recall", () => {
    const recall = trace().recall("Fig oil", "F-7");
    if (!recall) throw new Error("no recall");
    expect(lines(recallSheet(recall, settings))).toEqual([
      "Recall: Fig oil, lot F-7",
      "By the table of moves and the runs log as they were on 2026-12-26",
      "Came in | Date | Best before | Note | g, or pieces",
      `${DAY} | ${DAY + 400} | by post | 1000`,
      "Candles that hold it | Poured | Scent | Vessel | Candles | Good | g, or pieces",
      `2026-340-01 | ${DAY + 10} | Fig | Tin | 12 | 11 | 95.5`,
      `2026-341-01 | ${DAY + 11} | Fig | Tin | 6 | 50.5`,
      "Total | 18 | 146",
      "These took of the item and name no lot, several as one, or one that had less: they may hold it too.",
      "May hold it | Poured | Scent | Vessel | Candles | Good | g, or pieces",
      `2026-342-01 | ${DAY + 12} | Fig | Tin | 8 | 8 | 60`,
      "Went elsewhere | Date | Note | g, or pieces",
      `${DAY + 13} | spilt | 20`,
      "Left on the shelf | 834",
    ]);
  });

  it("say of a total that it counts only the candles that are known", () => {
    const recall = trace().recall("Fig oil", "F-8");
    if (!recall) throw new Error("no recall");
    const total = lines(recallSheet(recall, settings)).filter((line) => line.startsWith("Total"));
    expect(total).toEqual(["Total, as far as known | 0 | 0 | 30"]);
  });

  it("list what went into a run, and say what is not known", () => {
    const contents = trace().contents("2026-343-01");
    if (!contents) throw new Error("no contents");
    expect(lines(contentsSheet(contents, settings))).toEqual([
      "What went into run 2026-343-01",
      "By the table of moves and the runs log as they were on 2026-12-26",
      "Candles | Poured | Scent | Vessel | Candles | Good",
      "The log does not know this run: its candles are not known.",
      "Item | Came in | Lot | Best before | g, or pieces",
      `Fig oil | ${DAY + 1} | F-8 | 30`,
    ]);
  });

  it("are printed across on the paper of the settings, with the title on each page and long lines over all columns", () => {
    const [recall, contents] = [trace().recall("Fig oil", "F-8"), trace().contents("2026-340-01")];
    if (!recall || !contents) throw new Error("not found");
    for (const sheet of [recallSheet(recall, settings), contentsSheet(contents, settings)]) {
      expect(sheet.print).toEqual({ paper: "a4", landscape: true, repeatRows: [0, 0] });
      const [title] = sheet.cells;
      expect(title).toMatchObject({ row: 0, column: 0, look: "title", across: sheet.widths.length });
      // Headings are coloured from edge to edge, also where nothing stands.
      const heading = sheet.cells.filter(({ look }) => look === "heading").map(({ column }) => column);
      expect(heading.slice(0, 7)).toEqual([0, 1, 2, 3, 4, 5, 6]);
    }
    // A day is shown as one, and half a gram is not rounded away.
    const shown = recallSheet(recall, settings).cells.filter(({ format }) => format !== undefined);
    const formatOf = (value: number) =>
      shown.find(({ content }) => content && "number" in content && content.number === value)?.format;
    expect([formatOf(DAY + 1), formatOf(500), formatOf(30)]).toEqual(["yyyy-mm-dd", "#,##0", "#,##0"]);
    // Days stand left, under their headings.
    expect(shown.filter(({ format }) => format === "yyyy-mm-dd").every(({ align }) => align === "left")).toBe(true);
    const [used] = contentsSheet(contents, settings).cells.filter(
      ({ content }) => content && "number" in content && content.number === 95.5,
    );
    expect(used?.format).toBe("#,##0.0##");
  });

  it("say of a run that no move names that nothing is known of it, and of a part that it has no lot", () => {
    const nothing = new Trace(movesOf([]), LOG).contents("2026-340-01");
    if (!nothing) throw new Error("no contents");
    expect(lines(contentsSheet(nothing, settings)).at(-1)).toBe(
      "No move names this run: what went into it is not known.",
    );
    const lotless = trace().contents("2026-342-01");
    if (!lotless) throw new Error("no contents");
    expect(lines(contentsSheet(lotless, settings)).at(-1)).toBe("Fig oil | no lot written | 60");
  });

  it("say of a lot that no move brought in that none did", () => {
    const taken = new Trace(movesOf([[DAY, "Wax", "W", -4, null, null, "R-1"]]), []).recall("Wax", "W");
    if (!taken) throw new Error("no recall");
    expect(lines(recallSheet(taken, settings))).toContain("No move says that it came in.");
    const unnamed = new Trace(movesOf([[DAY, "Wax", "", 4]]), []).recall("Wax", "");
    if (!unnamed) throw new Error("no recall");
    expect(lines(recallSheet(unnamed, settings))[0]).toBe("Recall: Wax, what has no lot");
    expect(unnamed.unsure).toEqual([]);
  });

  it("say of a lot of which more went out than came in that other lots may be in its candles, and of those lots too", () => {
    const moves = movesOf([
      [DAY, "Wax", "A1", 1000],
      [DAY, "Wax", "A2", 2000],
      [DAY, "Wax", "B1", 500],
      [DAY + 10, "Wax", "A1", -1940, null, null, "2026-340-01"],
      [DAY + 11, "Wax", "B1", -400, null, null, "2026-341-01"],
    ]);
    const trace = new Trace(moves, LOG);
    const sheet = (lot: string) => lines(recallSheet(trace.recall("Wax", lot) as Recall, settings));
    expect(sheet("A1").slice(-2)).toEqual([
      "Left on the shelf | -940",
      "More went out than came in of this lot: a receipt is missing, or candles listed here hold another lot. Look at its rows in the moves.",
    ]);
    // Of the 1940 g 940 were another lot; B1 has all that was taken of it.
    expect(trace.recall("Wax", "A2")?.unsure.map(({ run, lot }) => [run, lot])).toEqual([["2026-340-01", "A1"]]);
    expect(sheet("A2").slice(-4)).toEqual([
      "These took of the item and name no lot, several as one, or one that had less: they may hold it too.",
      "May hold it | Poured | Scent | Vessel | Candles | Good | g, or pieces",
      `2026-340-01 | ${DAY + 10} | Fig | Tin | 12 | 11 | 1940`,
      "Left on the shelf | 2000",
    ]);
    expect(trace.recall("Wax", "A1")?.unsure).toEqual([]);
  });

  it("hold text as text, whatever it begins with", () => {
    const moves = movesOf([
      [DAY, '=HYPERLINK("x")', "+1", 5, null, null, null, "@note"],
      [DAY, '=HYPERLINK("x")', "+1", -5, null, null, "=RUN()"],
    ]);
    const hostile = new Trace(moves, [{ ...candles("=RUN()", DAY, 1, 1), scent: "-2+3" }]);
    const [recall, contents] = [hostile.recall('=HYPERLINK("x")', "+1"), hostile.contents("=RUN()")];
    if (!recall || !contents) throw new Error("not found");
    const all = [...lines(recallSheet(recall, settings)), ...lines(contentsSheet(contents, settings))].join("\n");
    for (const text of ['=HYPERLINK("x")', "+1", "@note", "=RUN()", "-2+3"]) expect(all).toContain(text);
  });
});

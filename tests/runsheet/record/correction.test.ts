import { describe, expect, it } from "vitest";
import { correctedMoves, correctedRows } from "../../../src/runsheet/record/correction";
import type { LogRow, LogTable } from "../../../src/runsheet/record/logAddition";
import { logRows } from "../../../src/runsheet/record/logRows";
import { potsByState } from "../../../src/runsheet/record/openPots";
import { type PouredRun, withPots } from "../../../src/runsheet/record/poured";
import type { Move } from "../../../src/runsheet/tables/moves";
import { LOG_COLUMNS } from "../../../src/runsheet/tables/runsLog";
import type { CellValue } from "../../../src/sheet/sheet";
import { logTable, readLog } from "./logs";
import { pouredRun, vesselsOf } from "./poured";

const VESSELS = vesselsOf(["Tin", 120, 0.85]);
const HEADINGS = LOG_COLUMNS.map(({ heading }) => heading);

/** A log that holds these rows, as a spreadsheet gives them back. */
const tableOf = (rows: readonly LogRow[], headings: readonly string[] = HEADINGS): LogTable =>
  logTable({
    headings,
    rows: rows.map((row) =>
      headings.map((heading): CellValue => {
        const content = row[heading as keyof LogRow];
        return content ? ("text" in content ? content.text : "number" in content ? content.number : null) : null;
      }),
    ),
  });
const two = (good: number, actual = 1000): PouredRun =>
  pouredRun([
    { scent: "Cedar", lines: [{ good, weighed: 99 }], parts: [{ planned: 1000, actual }] },
    { scent: "Fig", lines: [{ good: 10 }] },
  ]);
const correct = (run: PouredRun, rows: readonly LogRow[], headings?: readonly string[]) => {
  const table = tableOf(rows, headings);
  return correctedRows(run, run.pots, table, readLog(table), VESSELS);
};
const shown = (rows: readonly LogRow[]) =>
  rows.map(({ Scent, Candles, Good, "Wax actual": wax }) =>
    [Scent, Candles, Good, wax].map((one) => Object.values(one ?? {})[0]),
  );

describe("the pots of a run", () => {
  it("are open once something is written of them and they are not in the log", () => {
    const run = two(9);
    const [first, second] = run.pots as [PouredRun["pots"][0], PouredRun["pots"][0]];
    const blank = {
      ...second,
      parts: second.parts.map((one) => ({ ...one, actual: undefined })),
      lines: second.lines.map((one) => ({ ...one, good: undefined })),
    };
    const log = readLog(tableOf(logRows(withPots(run, [first]), VESSELS)));
    const states = (of: PouredRun) => {
      const { open, logged, unpoured } = potsByState(of, log);
      return [open, logged, unpoured].map((pots) => pots.map(({ scent }) => scent));
    };
    expect(states(run)).toEqual([["Fig"], ["Cedar"], []]);
    expect(states(withPots(run, [first, blank]))).toEqual([[], ["Cedar"], ["Fig"]]);
    // A log that does not say which pots has them all.
    const old = readLog(tableOf(logRows(run, VESSELS), HEADINGS.slice(0, 17)));
    expect(potsByState(run, old).open).toEqual([]);
  });
});

const ALL = ["A", "B"];
const move = (item: string, lot: string, count: number, note = ""): Move => ({
  ...{ row: 0, date: 1, item, lot, change: { count, weight: count } },
  ...{ paid: undefined, bestBefore: undefined, run: "2026-330-01", note },
});

describe("a correction", () => {
  it("is nothing where the sheet says what the log says, also in a log with fewer columns", () => {
    expect(correct(two(9), logRows(two(9), VESSELS))).toEqual([]);
    expect(correct(two(9), logRows(two(9), VESSELS), HEADINGS.slice(0, 17))).toEqual([]);
  });

  it("takes back the row that is wrong and writes it anew, and leaves the others", () => {
    const rows = correct(two(8, 990), logRows(two(9), VESSELS));
    expect(shown(rows)).toEqual([
      ["Cedar", -10, -9, -1000],
      ["Cedar", 10, 8, 990],
    ]);
    // A share is no amount: what is taken back has none, and shows no factor.
    expect(rows[0]).not.toHaveProperty("Yield");
    expect(rows[0]).not.toHaveProperty("Weighed each");
  });

  it("leaves what is right standing, and nothing twice", () => {
    const wrong = logRows(two(9), VESSELS);
    const corrected = [...wrong, ...correct(two(8), wrong)];
    const log = readLog(tableOf(corrected));
    expect(log.rows.map(({ scent, cells }) => [scent, cells.Good])).toEqual([
      ["Fig", 10],
      ["Cedar", 8],
    ]);
    expect(log.lots).toHaveLength(4);
    // Back again: the first row was taken back once, and stands again as the last one.
    const again = correct(two(9), corrected);
    expect(shown(again)).toEqual([
      ["Cedar", -10, -8, -1000],
      ["Cedar", 10, 9, 1000],
    ]);
    expect(correct(two(9), [...corrected, ...again])).toEqual([]);
  });

  it("brings back the lot that was not the one, and takes the other", () => {
    const used = (item: string, lot: string, written: number) => ({
      ...{ item, lot, use: "weight" as const, quantity: written, written, pots: ALL },
    });
    const before = [move("Wax", "W-1", -990), move("Cedar", "C-1", -31)];
    expect(correctedMoves(before, [used("wax", "W-2", 980), used("Cedar", "c-1", 31)], ALL)).toEqual([
      { item: "Wax", lot: "W-1", change: 990, pots: undefined },
      { item: "wax", lot: "W-2", change: -980, pots: "all" },
    ]);
    expect(correctedMoves(before, [used("Wax", "W-1", 990), used("Cedar", "C-1", 30)], ALL)).toEqual([
      { item: "Cedar", lot: "C-1", change: 31, pots: undefined },
      { item: "Cedar", lot: "C-1", change: -30, pots: "all" },
    ]);
  });

  it("brings back a lot that went into another pot, and leaves alone what names no pots", () => {
    const used = (pots: readonly string[]) => ({
      ...{ item: "Wax", lot: "W-1", use: "weight" as const, quantity: 5 },
      written: 5,
      pots,
    });
    const noted = (...notes: string[]) => notes.map((note) => move("Wax", "W-1", -5 / notes.length, note));
    expect(correctedMoves(noted("pots: A"), [used(["B"])], ALL)).toEqual([
      { item: "Wax", lot: "W-1", change: 5, pots: ["A"] },
      { item: "Wax", lot: "W-1", change: -5, pots: ["B"] },
    ]);
    expect(correctedMoves(noted("all pots"), [used(ALL)], ALL)).toEqual([]);
    expect(correctedMoves(noted("pots: B", "correction, pots: A"), [used(ALL)], ALL)).toEqual([]);
    expect(correctedMoves(noted(""), [used(["B"])], ALL)).toEqual([]);
  });
});

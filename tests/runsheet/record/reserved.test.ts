import { describe, expect, it } from "vitest";
import { type LogTable, NO_LOG, readLog } from "../../../src/runsheet/record/readLog";
import { rejectShare } from "../../../src/runsheet/record/rejectShare";
import { reservedBy } from "../../../src/runsheet/record/reserved";
import { RUNS_LOG } from "../../../src/runsheet/record/runsLog";
import type { Components } from "../../../src/runsheet/tables/components";
import type { CellValue } from "../../../src/sheet/sheet";
import { pouredRun } from "./poured";

const NONE: Components = new Map();
const log = (...rows: Readonly<Record<string, CellValue>>[]) => {
  const headings = RUNS_LOG.columns.map(({ heading }) => heading);
  const table: LogTable = { headings, rows: rows.map((cells) => headings.map((heading) => cells[heading] ?? null)) };
  return readLog(table);
};
// Two pots, each 1000 of wax and 30 of Cedar for ten tins of 100.
const run = pouredRun([{}, {}]);
const of = (amount: number, item: string, isCounted = false) => ({ item, amount, isCounted });

describe("what a written run will take", () => {
  it("is all that its pots plan, with vessels and components, while none of it is logged", () => {
    const components: Components = new Map([["tin", [{ item: "Wick", each: 2, wrong: [] }]]]);
    const pot = [of(1000, "Wax"), of(30, "Cedar"), of(10, "Tin", true), of(20, "Wick", true)];
    expect(reservedBy(run, NO_LOG, components, "g")).toEqual([...pot, ...pot]);
  });

  it("is what is left where some pots are logged, and nothing where all are or the log does not say which", () => {
    const row = { Lot: run.lot, Scent: "Cedar", Vessel: "Tin", Candles: 10 };
    const wax = (known: ReturnType<typeof log>) =>
      reservedBy(run, known, NONE, "g").flatMap(({ item, amount }) => (item === "Wax" ? [amount] : []));
    expect(wax(log({ ...row, Pots: run.pots[0]?.id ?? "" }))).toEqual([1000]);
    expect(wax(log({ ...row, Pots: run.pots.map(({ id }) => id).join("; ") }))).toEqual([]);
    expect(wax(log(row))).toEqual([]);
    expect(wax(log({ ...row, Lot: "2026-329-01" }))).toEqual([1000, 1000]);
  });

  it("is in the unit asked for", () => {
    expect(reservedBy(run, NO_LOG, NONE, "kg").slice(0, 3)).toEqual([
      of(1, "Wax"),
      of(0.03, "Cedar"),
      of(10, "Tin", true),
    ]);
  });
});

describe("rejects", () => {
  const row = (candles: number | undefined, good: number | undefined) => ({
    ...{ run: "2026-330-01", date: 46352, scent: "Fig", vessel: "Tin", candles, good },
  });
  it("are the share of the counted candles that were not good", () => {
    // Of 40 counted ones 38 were good.
    expect(rejectShare([row(30, 28), row(10, 10), row(50, undefined)])).toBeCloseTo(2 / 40, 12);
    expect(rejectShare([row(50, undefined)])).toBeUndefined();
    expect(rejectShare([])).toBeUndefined();
  });
});

import { describe, expect, it } from "vitest";
import { openRun } from "../../../src/runsheet/record/openRun";
import { rejectShare } from "../../../src/runsheet/record/rejectShare";
import { LOG_COLUMNS, NO_LOG } from "../../../src/runsheet/tables/runsLog";
import type { CellValue } from "../../../src/sheet/sheet";
import { readLog } from "./logs";
import { pouredRun } from "./poured";

const log = (...rows: Readonly<Record<string, CellValue>>[]) => {
  const headings = LOG_COLUMNS.map(({ heading }) => heading);
  return readLog({ headings, rows: rows.map((cells) => headings.map((heading) => cells[heading] ?? null)) });
};
// Two pots, each 1000 of wax and 30 of Cedar for ten tins of 100.
const run = pouredRun([{}, {}]);
const weight = (amount: number, item: string) => ({ item, amount });

describe("what a written run will take", () => {
  it("is all that its pots take, while none of it is logged", () => {
    const pot = [weight(1000, "Wax"), weight(30, "Cedar")];
    const tins = { vessel: "Tin", count: 10 };
    const candles = { ...tins, scent: "Cedar" };
    expect(openRun(run, NO_LOG, "g")).toEqual({
      lot: "2026-330-01",
      date: 46352,
      candles: [candles, candles],
      ingredients: ["Wax", "Cedar", "Wax", "Cedar"],
      weighed: [...pot, ...pot],
      vessels: [tins, tins],
    });
  });

  it("is what is left where some pots are logged, and nothing where all are or the log does not say which", () => {
    const row = { Lot: run.lot, Scent: "Cedar", Vessel: "Tin", Candles: 10 };
    const wax = (known: ReturnType<typeof log>) =>
      openRun(run, known, "g")?.weighed.flatMap(({ item, amount }) => (item === "Wax" ? [amount] : []));
    const half = log({ ...row, Pots: run.pots[0]?.id ?? "" });
    expect(wax(half)).toEqual([1000]);
    // By which batch it was written is told by all of it.
    expect(openRun(run, half, "g")?.candles).toHaveLength(2);
    expect(openRun(run, log({ ...row, Pots: run.pots.map(({ id }) => id).join("; ") }), "g")).toBeUndefined();
    expect(openRun(run, log(row), "g")).toBeUndefined();
    expect(wax(log({ ...row, Lot: "2026-329-01" }))).toEqual([1000, 1000]);
  });

  it("is what was weighed where that is written, in the unit asked for", () => {
    const parts = [
      { planned: 1000, actual: 1100 },
      { label: "Wax: Soy", planned: 500 },
    ];
    expect(openRun(pouredRun([{ parts }]), NO_LOG, "kg")?.weighed).toEqual([weight(1.1, "Wax"), weight(0.5, "Soy")]);
  });
});

describe("rejects", () => {
  const row = (candles: number | undefined, good: number | undefined) => ({
    ...{ run: "2026-330-01", date: 46352, scent: "Fig", vessel: "Tin", pots: undefined, candles, good },
  });
  it("are the share of the counted candles that were not good", () => {
    // Of 40 counted ones 38 were good.
    expect(rejectShare([row(30, 28), row(10, 10), row(50, undefined)])).toBeCloseTo(2 / 40, 12);
    // More good ones than candles are a slip of the pen.
    expect(rejectShare([row(30, 28), row(10, 10), row(1, 2), row(5, -1)])).toBeCloseTo(2 / 40, 12);
    expect(rejectShare([row(50, undefined)])).toBeUndefined();
    expect(rejectShare([])).toBeUndefined();
  });
});

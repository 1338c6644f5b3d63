import { describe, expect, it } from "vitest";
import { worksheetData } from "../../../src/host/univer/workbook";
import { buildRun } from "../../../src/runsheet/buildRun";
import { FIRST_SETTINGS, type Settings } from "../../../src/runsheet/settings";
import { describeRun } from "../../../src/runsheet/sheet/describeRun";
import { AT } from "../../../src/runsheet/sheet/layout";
import { pagesOf } from "../../../src/sheet/pageBreaks";

const settings: Settings = { ...FIRST_SETTINGS, loss: 0 };

/** Orders of 35 candles each, of forty vessels in 25 scents. */
function runOf(orders: number) {
  const rows = Array.from({ length: orders }, (_, i) => [`Tin ${i % 40}`, 35, 100 + (i % 40), `Scent ${i % 25}`, 0.08]);
  const columns = { vessel: 0, quantity: 1, fill: 2, scent: 3, load: 4 };
  return buildRun({ pour: { type: "pour", headings: [], rows, columns } } as never, settings);
}

describe("a run of very many candles", () => {
  it.each([1_000, 5_000])("is laid out for %d rows of 35", (orders) => {
    const run = runOf(orders);
    expect(run.plan.totals.candles).toBe(orders * 35);
    const sheet = describeRun(run, { lot: "2026-330-01", date: 46352, settings });
    // More cells than any call takes as arguments.
    expect(sheet.cells.length).toBeGreaterThan(140 * orders);
    const titles = new Set(
      sheet.cells.flatMap(({ row, column, content }) =>
        column === AT.key && content && "text" in content && content.text.endsWith(" pot") ? [row] : [],
      ),
    );
    expect(titles.size).toBe(run.plan.totals.pots);
    const { breaks } = pagesOf(sheet, new Map(), 15);
    expect(breaks.length).toBeGreaterThan(100);
    // No program takes more breaks than this in a sheet.
    expect(breaks.length).toBeLessThanOrEqual(1023);
    // The list itself may take more pages than one.
    const first = breaks.findIndex((row) => titles.has(row));
    expect(first).toBeLessThan(10);
    expect(breaks.slice(first).filter((row) => !titles.has(row))).toEqual([]);
    expect(worksheetData("large", sheet, []).rowCount).toBeGreaterThan(orders);
  });
});

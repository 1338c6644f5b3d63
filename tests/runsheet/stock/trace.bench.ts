import { bench, describe } from "vitest";
import { ledgerOf } from "../../../src/runsheet/stock/ledger";
import { Trace } from "../../../src/runsheet/stock/trace";
import type { CellValue } from "../../../src/sheet/sheet";
import { DAY, movesOf } from "./moved";

/** Ten years of a busy studio: 50,000 moves of 60 items in 3,000 lots, into 4,000 runs. */
const rows = Array.from({ length: 50_000 }, (_, i): CellValue[] => {
  const lot = i % 3000;
  const isReceipt = i < 3000;
  return [DAY + Math.floor(i / 14), `Item ${lot % 60}`, `L-${lot}`, isReceipt ? 20_000 : -12.5, ...more(i, isReceipt)];
});
function more(i: number, isReceipt: boolean): CellValue[] {
  return isReceipt ? [95, DAY + 400, null, null] : [null, null, `Run ${i % 4000}`, null];
}
const moves = movesOf(rows);
const log = Array.from({ length: 8000 }, (_, i) => ({
  ...{ run: `Run ${i % 4000}`, date: DAY + i, scent: "Fig", vessel: "Tin", pots: undefined, candles: 12, good: 12 },
}));
const trace = new Trace(moves, log);

describe("50,000 moves", () => {
  bench("one plain pass over the rows that adds a column up", () => {
    let total = 0;
    for (const row of rows) total += row[3] as number;
    if (total === 0) throw new Error("nothing to add up");
  });
  bench("reading the table", () => {
    movesOf(rows);
  });
  bench("the ledger of all lots", () => {
    ledgerOf(moves);
  });
  bench("sorting them for traces, and one recall", () => {
    new Trace(moves, log).recall("Item 7", "L-67");
  });
  bench("each further recall, and what went into a run", () => {
    trace.recall("Item 7", "L-67");
    trace.contents("Run 7");
  });
});

import { ledgerOf } from "../../src/runsheet/stock/ledger";
import { Trace } from "../../src/runsheet/stock/trace";
import type { CellValue } from "../../src/sheet/sheet";
import { DAY, movesOf } from "../runsheet/stock/moved";
import { type Part, ratiosOf, spread } from "./figures";

/** Ten years of a busy studio: 50,000 moves of 60 items in 3,000 lots, into 4,000 runs. */
const rows = Array.from({ length: 50_000 }, (_, i): CellValue[] => {
  const lot = i % 3000;
  const isReceipt = i < 3000;
  const rest = isReceipt ? [95, DAY + 400, null, null] : [null, null, `Run ${i % 4000}`, null];
  return [DAY + Math.floor(i / 14), `Item ${lot % 60}`, `L-${lot}`, isReceipt ? 20_000 : -12.5, ...rest];
});
const log = Array.from({ length: 8000 }, (_, i) => ({
  ...{ run: `Run ${i % 4000}`, date: DAY + i, scent: "Fig", vessel: "Tin", pots: undefined, candles: 12, good: 12 },
}));

export const stock: Part = {
  title: "Stock: 50,000 moves, against one plain pass over the rows that adds the amounts of each lot up",
  measure: async () => {
    const moves = movesOf(rows);
    const plain = () => {
      const totals = new Map<unknown, number>();
      for (const row of rows) totals.set(row[2], (totals.get(row[2]) ?? 0) + (row[3] as number));
      return totals;
    };
    const trace = new Trace(moves, log);
    const ways: Record<string, () => unknown> = {
      "reading the table": () => movesOf(rows),
      "the ledger of all lots": () => ledgerOf(moves),
      "sorting for traces, and one recall": () => new Trace(moves, log).recall("Item 7", "L-67"),
      "each further recall": () => trace.recall("Item 7", "L-67"),
    };
    const ratios = await ratiosOf([plain, ...Object.values(ways)], 7);
    return Object.keys(ways).map((what, i) => ({ what, is: spread(ratios[i] as number[], " x") }));
  },
};

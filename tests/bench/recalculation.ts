import { calculate } from "../../src/engine/calculate";
import type { Cell, Sheet } from "../../src/sheet/sheet";
import { bundle } from "./built";
import { atMost, type Figure, type Part, ratiosOf, spread, timeOf } from "./figures";

const TURNS = 5;

/** A column of weights, and beside it what is worked out of it. */
function sheetOf(rows: number, results: readonly Cell[]): Sheet {
  const weights = Array.from({ length: rows }, (_, row) => ({ row, column: 0, content: { number: 100 + row / 10 } }));
  return { name: "Fills", widths: [10, 10], cells: [...weights, ...results] };
}
const down = (rows: number, formula: (row: number) => string): Cell[] =>
  Array.from({ length: rows }, (_, row) => ({ row, column: 1, content: { formula: formula(row + 1) } }));
const spilled = (formula: string): Cell[] => [{ row: 0, column: 1, content: { formula } }];

async function work(sheet: Sheet): Promise<void> {
  const [values = []] = await calculate([sheet], bundle);
  const last = values.at(-1) as readonly unknown[];
  const is = last[1];
  const right = typeof is === "number" && Math.abs(is - (last[0] as number) * 0.86) < 1e-6;
  if (!right) throw new Error(`a wrong answer: ${is}`);
}

/** Against the same formula in the engine's own functions. */
async function compared(what: string, rows: number, ours: readonly Cell[], own: readonly Cell[]): Promise<Figure> {
  const [native, mine] = [sheetOf(rows, own), sheetOf(rows, ours)];
  const [ratios = []] = await ratiosOf([() => work(native), () => work(mine)], TURNS, { warm: 1 });
  return atMost(what, ratios, 1.05);
}

const ours = (rows: number) => down(rows, (row) => `=POUR.FILLWEIGHT(A${row},0.86)`);
const native = (rows: number) => down(rows, (row) => `=IF(A${row}>=0,A${row}*IF(AND(0.86>0,0.86<=2),0.86,NA()),NA())`);

export const recalculation: Part = {
  title: "Recalculation in the embedded engine (Node), against its own formulas with the same checks",
  measure: async () => {
    const figures: Figure[] = [];
    for (const rows of [10_000, 20_000]) {
      figures.push(await compared(`${rows} rows filled down`, rows, ours(rows), native(rows)));
    }
    const all = "A1:A20000";
    const spill = spilled(`=POUR.FILLWEIGHT(${all},0.86)`);
    figures.push(await compared("one spill of 20000 rows", 20_000, spill, spilled(`=${all}*0.86`)));
    const [some, twice] = [sheetOf(10_000, ours(10_000)), sheetOf(20_000, ours(20_000))];
    const [growth = []] = await ratiosOf([() => work(some), () => work(twice)], TURNS, { warm: 1 });
    figures.push(atMost("20000 rows against 10000: growth", growth, 2.4));
    const seconds: number[] = [];
    for (let i = 0; i < 3; i++) seconds.push((await timeOf(() => work(twice))) / 1000);
    return [...figures, { what: "20000 rows filled down", is: spread(seconds, " s") }];
  },
};

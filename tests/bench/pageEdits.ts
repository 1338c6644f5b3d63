import type { Cell } from "../../src/sheet/sheet";
import { later } from "../browser/later";
import type { TryoutPage } from "../browser/page";
import { atMost, type Figure, median, short } from "./figures";

/** Of edits more: what the page does after one falls into the next. */
const TURNS = { fills: 5, edits: 15 };

/** Sheets of weights in A and what is worked out of them in B; all of it depends on the factor in D1. */
const FORMULAS = {
  Own: "=IF(A#>=0,A#*IF(AND($D$1>0,$D$1<=2),$D$1,NA()),NA())",
  Ours: "=POUR.FILLWEIGHT(A#,$D$1)",
};
type Way = keyof typeof FORMULAS;

const weightIn = (row: number) => 100 + row / 10;
const number = (row: number, column: number, number: number): Cell => ({ row, column, content: { number } });

/** The page with both sheets, and what the first and the last row of their columns B must come to. */
class Sheets {
  first = weightIn(0);
  factor = 0.86;
  added = 0;

  constructor(
    readonly tryout: TryoutPage,
    readonly rows: number,
  ) {}

  async add(): Promise<void> {
    const cells = Array.from({ length: this.rows }, (_, row) => number(row, 0, weightIn(row)));
    cells.push(number(0, 3, this.factor));
    for (const name of Object.keys(FORMULAS)) {
      await this.tryout.host("addSheet", { name, widths: [10, 10, 10, 10], cells });
    }
  }

  /** What is written into B, another formula each time: what stands there already is no work. */
  filled(way: Way): Cell[] {
    return Array.from({ length: this.rows }, (_, row) => {
      const formula = `${FORMULAS[way].replaceAll("#", String(row + 1))}+${this.added}`;
      return { row, column: 1, content: { formula } };
    });
  }

  /** Milliseconds that the page takes until all that follows is worked out. */
  async timeOf(way: Way, cells: readonly Cell[]): Promise<number> {
    const { time, values } = await later(
      this.tryout.page,
      async ([way, cells]) => {
        const { host } = window.pourwright;
        const before = performance.now();
        await host.write(way, cells);
        await host.settled();
        const time = performance.now() - before;
        return { time, values: (await host.readSheet(way)).map((row) => row[1]) };
      },
      [way, cells] as const,
    );
    this.#check(way, 0, values[0], this.first);
    this.#check(way, this.rows - 1, values[this.rows - 1], weightIn(this.rows - 1));
    return time;
  }

  #check(way: Way, row: number, is: unknown, weight: number): void {
    const wanted = weight * this.factor + this.added;
    const right = typeof is === "number" && Math.abs(is - wanted) < 1e-6;
    if (!right) throw new Error(`${way}, row ${row + 1}: ${is} instead of ${wanted}`);
  }
}

/** The same cells written into both sheets in turns. */
async function compared(
  sheets: Sheets,
  what: string,
  turns: number,
  cells: (turn: number, way: Way) => Cell[],
): Promise<Figure> {
  const [ratios, times]: [number[], number[]] = [[], []];
  for (let turn = 0; turn <= turns; turn++) {
    const took = { Own: 0, Ours: 0 };
    const ways: Way[] = turn % 2 === 0 ? ["Own", "Ours"] : ["Ours", "Own"];
    for (const way of ways) took[way] = await sheets.timeOf(way, cells(turn, way));
    // The first turn only warms up.
    if (turn === 0) continue;
    ratios.push(took.Ours / took.Own);
    times.push(took.Ours);
  }
  const figure = atMost(what, ratios, 1.05);
  return { ...figure, is: `${figure.is}; ${short(median(times))} ms` };
}

/** Formulas filled down and cells changed in the page, against the engine's own functions with the same checks. */
export async function pageEdits(tryout: TryoutPage, rows: number): Promise<Figure[]> {
  const sheets = new Sheets(tryout, rows);
  await sheets.add();
  return [
    await compared(sheets, `${rows} rows filled down`, TURNS.fills, (turn, way) => {
      sheets.added = turn;
      return sheets.filled(way);
    }),
    await compared(sheets, `a cell changed that one of ${rows} depends on`, TURNS.edits, (turn) => {
      sheets.first = 200 + turn;
      return [number(0, 0, sheets.first)];
    }),
    await compared(sheets, `a cell changed that all ${rows} depend on`, TURNS.edits, (turn) => {
      sheets.factor = 0.8 + turn / 100;
      return [number(0, 3, sheets.factor)];
    }),
  ];
}

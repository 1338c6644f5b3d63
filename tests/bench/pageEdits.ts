import type { Cell } from "../../src/sheet/sheet";
import type { TryoutPage } from "../browser/page";
import { atMost, type Figure, median, short } from "./figures";

const TURNS = 5;

/** Sheets of weights in A and what is worked out of them in B; all of it depends on the factor in D1. */
const FORMULAS = {
  Own: "IF(A#>=0,A#*IF(AND($D$1>0,$D$1<=2),$D$1,NA()),NA())",
  Ours: "POUR.FILLWEIGHT(A#,$D$1)",
};
type Way = keyof typeof FORMULAS;

/** Milliseconds that the page takes in a turn, until all that follows is worked out. */
type Work = (tryout: TryoutPage, way: Way, turn: number) => Promise<number>;

const filled =
  (rows: number): Work =>
  ({ page }, way, turn) =>
    page.evaluate(
      ([way, formula, rows]) => {
        const cells = Array.from({ length: rows }, (_, row) => ({
          ...{ row, column: 1, content: { formula: formula.replaceAll("#", String(row + 1)) } },
        }));
        const { host } = window.pourwright;
        const before = performance.now();
        const done = host.write(way, cells).then(() => host.readSheet(way));
        return window.keep(done.then(() => performance.now() - before));
      },
      // Another formula each time: what stands there already is no work.
      [way, `${FORMULAS[way]}+${turn}`, rows] as const,
    );

const changed =
  (column: number, numberIn: (turn: number) => number): Work =>
  ({ page }, way, turn) =>
    page.evaluate(
      ([way, column, number]) => {
        const { host } = window.pourwright;
        const before = performance.now();
        const done = host.write(way, [{ row: 0, column, content: { number } }]).then(() => host.readSheet(way));
        return window.keep(done.then(() => performance.now() - before));
      },
      [way, column, numberIn(turn)] as const,
    );

async function compared(tryout: TryoutPage, what: string, work: Work): Promise<Figure> {
  const [ratios, times]: [number[], number[]] = [[], []];
  for (let turn = 0; turn <= TURNS; turn++) {
    const own = await work(tryout, "Own", turn);
    const ours = await work(tryout, "Ours", turn);
    // The first turn only warms up.
    if (turn === 0) continue;
    ratios.push(ours / own);
    times.push(ours);
  }
  const figure = atMost(what, ratios, 1.05);
  return { ...figure, is: `${figure.is}; ${short(median(times))} ms` };
}

/** Formulas filled down and cells changed in the page, against the engine's own functions with the same checks. */
export async function pageEdits(tryout: TryoutPage, rows: number): Promise<Figure[]> {
  const cells = Array.from(
    { length: rows },
    (_, row): Cell => ({ row, column: 0, content: { number: 100 + row / 10 } }),
  );
  cells.push({ row: 0, column: 3, content: { number: 0.86 } });
  for (const name of Object.keys(FORMULAS)) await tryout.host("addSheet", { name, widths: [10, 10, 10, 10], cells });
  return [
    await compared(tryout, `${rows} rows filled down`, filled(rows)),
    await compared(
      tryout,
      `a cell changed that one of ${rows} depends on`,
      changed(0, (turn) => 200 + turn),
    ),
    await compared(
      tryout,
      `a cell changed that all ${rows} depend on`,
      changed(3, (turn) => 0.8 + turn / 100),
    ),
  ];
}

import { buildRun } from "../../src/runsheet/buildRun";
import { FIRST_SETTINGS } from "../../src/runsheet/settings";
import { describeRun } from "../../src/runsheet/sheet/describeRun";
import { type Figure, type Part, spread, timeOf } from "./figures";

/** Rows of 12 candles in 8 scents. */
export function tablesOf(rows: number): Parameters<typeof buildRun>[0] {
  const cells = Array.from({ length: rows }, (_, i) => [`Tin ${i}`, 12, 100 + (i % 150), `Scent ${i % 8}`, 0.08]);
  return {
    pour: {
      ...{ type: "pour", headings: ["Vessel", "Quantity", "Fill weight (g)", "Scent", "Load"], rows: cells },
      columns: { vessel: 0, quantity: 1, fill: 2, scent: 3, load: 4 },
    },
  };
}

/** So many different fills in one scent. */
function fillsOf(fills: number): ReturnType<typeof tablesOf> {
  const { pour } = tablesOf(fills);
  const cells = (pour?.rows ?? []).map(([vessel], i) => [
    vessel,
    1 + (i % 29),
    60 + ((i * 7.3) % 340),
    "Scent 0",
    0.08,
  ]);
  return { pour: { ...pour, rows: cells } as typeof pour };
}

/** A number typed into a row of the batch, and all planned anew; each time another one, so that none is known. */
async function edited(what: string, tables: ReturnType<typeof tablesOf>): Promise<Figure> {
  const times: number[] = [];
  for (let typed = 30; typed < 45; typed++) {
    const rows = tables.pour?.rows.map((row, i) => (i === 1 ? row.map((cell, c) => (c === 1 ? typed : cell)) : row));
    const changed = { pour: { ...tables.pour, rows } } as typeof tables;
    times.push(await timeOf(() => buildRun(changed, FIRST_SETTINGS)));
  }
  return { what, is: spread(times.slice(5), " ms") };
}

export const runSheets: Part = {
  title: "Run sheets in 8 scents: worked out (in the page by a worker) and described, without a spreadsheet",
  measure: async () => {
    const figures: Figure[] = [];
    for (const rows of [10, 100, 1000, 5000]) {
      const tables = tablesOf(rows);
      const [planned, described]: [number[], number[]] = [[], []];
      let bytes = 0;
      let run = buildRun(tables, FIRST_SETTINGS);
      for (let i = 0; i < 4; i++) {
        // Another loss each time, so that no pot is known from before.
        const settings = { ...FIRST_SETTINGS, loss: 0.03 + i / 1000 };
        planned.push(
          await timeOf(() => {
            run = buildRun(tables, settings);
          }),
        );
        described.push(
          await timeOf(() => {
            bytes = JSON.stringify(
              describeRun(run, { lot: "2026-330-01", date: 46352, settings: FIRST_SETTINGS }),
            ).length;
          }),
        );
      }
      figures.push({
        what: `${rows} rows: planned; described`,
        is: `${spread(planned, " ms")}; ${spread(described, " ms")}; ${(bytes / 1e6).toFixed(2)} MB`,
      });
    }
    figures.push(await edited("1000 rows: one number typed, planned anew", tablesOf(1000)));
    figures.push(await edited("120 fills in one scent: the same", fillsOf(120)));
    return figures;
  },
};

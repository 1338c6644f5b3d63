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

export const runSheets: Part = {
  title: "Run sheets in 8 scents: worked out (in the page by a worker) and described, without a spreadsheet",
  measure: async () => {
    const figures: Figure[] = [];
    for (const rows of [10, 100, 1000, 5000]) {
      const tables = tablesOf(rows);
      const [planned, described]: [number[], number[]] = [[], []];
      let bytes = 0;
      for (let i = 0; i < 4; i++) {
        let run = buildRun(tables, FIRST_SETTINGS);
        planned.push(
          await timeOf(() => {
            run = buildRun(tables, FIRST_SETTINGS);
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
    return figures;
  },
};

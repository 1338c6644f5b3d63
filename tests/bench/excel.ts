import { ExcelHost } from "../../src/host/excel/adapter";
import { buildRun } from "../../src/runsheet/buildRun";
import { FIRST_SETTINGS } from "../../src/runsheet/settings";
import { describeRun } from "../../src/runsheet/sheet/describeRun";
import { StandIn } from "../host/excel/standIn";
import type { Figure, Part } from "./figures";
import { tablesOf } from "./runSheets";

/** Of a sheet that is written: to ask and to write, each once more where functions are still at work. */
const MOST_SYNCS = 4;
/** What Excel on the web takes at once. */
const MOST_BYTES = 5 * 1024 * 1024;

async function written(rows: number, live: boolean): Promise<Figure> {
  const settings = { ...FIRST_SETTINGS, live };
  const sheet = describeRun(buildRun(tablesOf(rows), settings), { lot: "2026-330-01", date: 46_352, settings });
  const standIn = new StandIn();
  const { page, forget } = standIn.connect();
  Object.assign(globalThis, page);
  standIn.sheet("Sheet1");
  const what = `${rows} rows, ${live ? "live formulas" : "plain numbers"}`;
  try {
    await new ExcelHost().addSheet(sheet);
    const bytes = Math.max(...standIn.requests);
    return {
      ...{ what, is: `${standIn.syncs} syncs, the longest ${(bytes / 1e6).toFixed(2)} MB` },
      ...{ goal: `at most ${MOST_SYNCS}, 5 MB`, holds: standIn.syncs <= MOST_SYNCS && bytes <= MOST_BYTES },
    };
  } catch (refused) {
    // Before anything is sent, in a sentence for the maker.
    return { what, is: refused instanceof Error ? refused.message : String(refused) };
  } finally {
    forget();
  }
}

export const excel: Part = {
  title: "Run sheets in 8 scents written into Excel: what Microsoft's client sends to a stand-in",
  measure: async () => {
    const figures: Figure[] = [];
    for (const rows of [10, 100, 1000, 5000]) {
      figures.push(await written(rows, true), await written(rows, false));
    }
    return figures;
  },
};

import { ExcelHost } from "../../src/host/excel/adapter";
import { type LaidOut, laidOut } from "../../src/host/excel/laidOut";
import { queuedBytes } from "../../src/host/excel/payload";
import { buildRun } from "../../src/runsheet/buildRun";
import { FIRST_SETTINGS } from "../../src/runsheet/settings";
import { describeRun } from "../../src/runsheet/sheet/describeRun";
import { StandIn } from "../host/excel/standIn";
import { type Figure, median, type Part, spread, timeOf } from "./figures";
import { tablesOf } from "./runSheets";

/** To ask, to write, to calculate and to set up the page. */
const FEWEST_SYNCS = 4;
/** What Excel on the web takes at once. */
const MOST_BYTES = 5_000_000;
/** Requests that carry a long sheet are filled to this share at least, but for the last. */
const FILLED = 0.6;

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
    const [most, all] = [Math.max(...standIn.requests), standIn.requests.reduce((sum, one) => sum + one)];
    const goal = FEWEST_SYNCS + Math.floor(all / (FILLED * MOST_BYTES));
    return {
      ...{ what, is: `${standIn.syncs} syncs, the longest ${(most / 1e6).toFixed(2)} of ${(all / 1e6).toFixed(1)} MB` },
      ...{ goal: `at most ${goal}, 5 MB`, holds: standIn.syncs <= goal && most <= MOST_BYTES },
    };
  } finally {
    forget();
  }
}

/** Milliseconds of the longest stretch in which the page cannot answer while a sheet is got ready for Excel. */
async function longestStretch(rows: number): Promise<Figure> {
  const settings = { ...FIRST_SETTINGS, live: true };
  const sheet = describeRun(buildRun(tablesOf(rows), settings), { lot: "2026-330-01", date: 46_352, settings });
  const longest: number[] = [];
  for (let turn = 0; turn < 5; turn++) {
    let steps: LaidOut["steps"] = [];
    const times = [
      await timeOf(() => {
        steps = laidOut(sheet).steps;
      }),
    ];
    for (const step of steps) times.push(await timeOf(() => queuedBytes<Excel.Worksheet>(step)));
    longest.push(Math.max(...times));
  }
  const what = `${rows} rows, live formulas: longest stretch of getting ready`;
  return { what, is: spread(longest, " ms"), goal: "at most 200 ms", holds: median(longest) <= 200 };
}

export const excel: Part = {
  title: "Run sheets in 8 scents written into Excel: what Microsoft's client sends to a stand-in",
  measure: async () => {
    const figures: Figure[] = [];
    for (const rows of [10, 100, 1000, 5000]) {
      figures.push(await written(rows, true), await written(rows, false));
    }
    return [...figures, await longestStretch(1000)];
  },
};

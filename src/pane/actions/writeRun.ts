import { type Host, StillCalculating } from "../../host/host";
import type { RunPlan } from "../../runsheet/plan/runPlan";
import { nextLot, withLot } from "../../runsheet/record/nextLot";
import { describeRun } from "../../runsheet/sheet/describeRun";
import type { Sheet } from "../../sheet/sheet";
import { logOn } from "../givenTables";
import type { Task } from "../state/useTask";
import { WRITING } from "../words/writing";
import { type Book, freshRun } from "./book";

/** Writes a new run sheet from the tables as they are now, dated so, with a lot that was never given. */
export async function writeRun(
  book: Book,
  date: number | undefined,
  task: Task,
): Promise<{ name: string; plan: RunPlan; words: string }> {
  const { host, kept, settings } = book;
  if (!kept || !settings || date === undefined) throw new Error(WRITING.fixSettings);
  task.onProgress(0);
  const { read, run } = await freshRun(book);
  const lot = nextLot(date, [...kept.lots, ...(await textsWithLots(host)), ...logOn(read, kept).lots]);
  const describe = (live: boolean) => describeRun(run, { lot, date, settings: { ...settings, live } });
  const name = await host.addSheet(shortEnough(describe, settings.live, host), task);
  book.keep((before) => ({ ...before, lots: withLot(before.lots, lot) }));
  return { name, plan: run.plan, words: await wordsForNew(name, host) };
}

/** The run sheet, refused when the program would work at its formulas for too long. */
function shortEnough(describe: (live: boolean) => Sheet, live: boolean, { mostFormulas = Infinity }: Host): Sheet {
  const sheet = describe(live);
  const formulas = formulasOf(sheet);
  if (formulas <= mostFormulas) return sheet;
  throw new Error(WRITING.tooLong(formulas, mostFormulas, live && formulasOf(describe(false)) <= mostFormulas));
}

const formulasOf = ({ cells }: Sheet): number =>
  cells.reduce((count, { content }) => (content && "formula" in content ? count + 1 : count), 0);

/** What may hold lots on the sheets themselves: their titles, and their names where a title was written over. */
const textsWithLots = async (host: Host): Promise<string[]> =>
  (await host.firstCells()).flatMap(({ sheet, value }) => [sheet, String(value ?? "")]);

async function wordsForNew(name: string, host: Host): Promise<string> {
  try {
    await host.readSheet(name);
    return WRITING.written(name);
  } catch (error) {
    if (!(error instanceof StillCalculating)) throw error;
    return WRITING.notWorkedOut(name);
  }
}

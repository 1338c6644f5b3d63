import { logRows } from "../../runsheet/record/logRows";
import { newFactors } from "../../runsheet/record/newFactors";
import { isPoured, type PouredRun } from "../../runsheet/record/poured";
import { massReport, pourWarnings } from "../../runsheet/record/pourWarnings";
import { loggedLots } from "../../runsheet/record/readLog";
import { logHeadings, logSheet } from "../../runsheet/record/runsLog";
import type { Settings } from "../../runsheet/settings";
import { vesselsOf } from "../givenTables";
import { LOGGING } from "../words/written";
import type { Book } from "./book";
import { type Report, readRun } from "./writtenRun";

/** What came of it: a question, or the words that it is logged and what became of the wax. */
export interface Logged {
  readonly report: Report | undefined;
  /** Undefined where nothing is logged yet. */
  readonly words: string | undefined;
}

/**
 * Logs what was poured by a run sheet. It asks first about what may be a slip, unless just that was asked about before.
 * @param copies sheets that carry the same lot
 */
export async function logPour(
  book: Book,
  sheet: string,
  copies: readonly string[],
  asked?: readonly string[],
): Promise<Logged> {
  const poured = await readRun(book.host, sheet);
  const { log, vessels } = await readRecord(book, poured.unit);
  refuse(poured, sheet, log ? loggedLots(log) : []);
  const list = [
    ...copies.map((copy) => LOGGING.isThisTheOne(copy, poured.lot, sheet)),
    ...pourWarnings(poured, vessels, log),
  ];
  if (list.length > 0 && JSON.stringify(list) !== JSON.stringify(asked)) {
    return { report: { sheet, says: LOGGING.askFirst(asked !== undefined), list, isAsking: true }, words: undefined };
  }
  const rows = logRows(poured, vessels);
  await book.host.append([log ? { table: log.name, headings: logHeadings(log), rows } : logSheet(rows)]);
  const words = LOGGING.done(poured.lot, rows.length) + (await wordsForLog(book, poured));
  const mass = massReport(poured);
  return { report: mass.length > 0 ? { sheet, says: LOGGING.mass(poured.lot), list: mass } : undefined, words };
}

/** What cannot be logged. */
function refuse(poured: PouredRun, sheet: string, lots: readonly string[]): void {
  if (poured.wrong.length > 0) throw new Error(LOGGING.wrong(poured.wrong.slice(0, 3)));
  if (!isPoured(poured)) throw new Error(LOGGING.nothingWritten(sheet));
  if (lots.includes(poured.lot)) throw new Error(LOGGING.loggedAlready(poured.lot));
}

/** The log and the vessels as they are now, their water in the unit of a run. */
async function readRecord({ refresh, kept }: Book, unit: Settings["unit"]) {
  const read = await refresh();
  return { log: read.log, vessels: vesselsOf(read, kept, unit) };
}

/** What to say of the log once rows were added; it is read again, for only what stands there is logged. */
async function wordsForLog(book: Book, { lot, unit }: PouredRun): Promise<string> {
  let after: Awaited<ReturnType<typeof readRecord>>;
  try {
    after = await readRecord(book, unit);
  } catch (error) {
    return LOGGING.notReadAgain(error instanceof Error ? error.message : String(error));
  }
  if (!after.log || !loggedLots(after.log).includes(lot)) throw new Error(LOGGING.notThere(lot));
  return newFactors(after.log, after.vessels).some(({ offer }) => offer) ? LOGGING.seeFactors : "";
}

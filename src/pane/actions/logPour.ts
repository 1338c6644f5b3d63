import { newFactors } from "../../runsheet/record/newFactors";
import { isPoured, type PouredRun } from "../../runsheet/record/poured";
import { massReport } from "../../runsheet/record/pourWarnings";
import { LOGGING } from "../words/logging";
import type { Book } from "./book";
import { readRecord } from "./onRecord";
import { type LogPlan, planLog } from "./planLog";
import { type Report, readRun } from "./writtenRun";

/** What came of it: what will be added, to be pressed for, or the words that it is logged and what became of the wax. */
export interface Logged {
  readonly report: Report | undefined;
  /** Undefined where nothing is logged yet. */
  readonly words: string | undefined;
}

/** What was pressed for: what was shown when it was, and whether a table of moves is to be begun with it. */
export interface LogChoice {
  /** Undefined where nothing was shown yet. */
  readonly shown?: string | undefined;
  readonly beginsMoves?: boolean;
}

/**
 * Logs what was poured by a run sheet: shows first what it will add, and adds just that, all or nothing.
 * @param copies sheets that carry the same lot
 */
export async function logPour(
  book: Book,
  sheet: string,
  copies: readonly string[],
  { shown, beginsMoves = false }: LogChoice = {},
): Promise<Logged> {
  const poured = await readRun(book.host, sheet);
  if (poured.wrong.length > 0) throw new Error(LOGGING.wrong(poured.wrong.slice(0, 3)));
  if (!poured.pots.some(isPoured)) throw new Error(LOGGING.nothingWritten(sheet));
  const record = await readRecord(book, poured.unit);
  const plan = planLog(poured, record, { sheet, copies, beginsMoves });
  const key = JSON.stringify([plan.parts, beginsMoves]);
  if (key !== shown)
    return { report: shownFirst(sheet, plan, key, shown !== undefined, beginsMoves), words: undefined };
  await book.host.append(plan.additions);
  const words = await wordsForLog(book, poured, plan, record.log.lots);
  const mass = massReport(poured);
  return {
    report: mass.length > 0 ? { sheet, parts: [{ says: LOGGING.mass(poured.lot), list: mass }] } : undefined,
    words,
  };
}

function shownFirst(
  sheet: string,
  { parts, press, offersMoves }: LogPlan,
  key: string,
  hasChanged: boolean,
  beginsMoves: boolean,
): Report {
  const [first, ...rest] = parts;
  const all = hasChanged && first ? [{ ...first, says: LOGGING.changed + first.says }, ...rest] : parts;
  const note = offersMoves ? [{ says: LOGGING.noMoves, list: [] }] : [];
  return { sheet, parts: [...all, ...note], ask: { shown: key, press, offersMoves, beginsMoves } };
}

/** What to say of the log once rows were added; it is read again, for only what stands there is logged. */
async function wordsForLog(
  book: Book,
  { lot, unit }: PouredRun,
  { rows, moves }: LogPlan,
  before: readonly string[],
): Promise<string> {
  const done = LOGGING.done(lot, rows.length, moves.length);
  let after: Awaited<ReturnType<typeof readRecord>>;
  try {
    after = await readRecord(book, unit);
  } catch (error) {
    return done + LOGGING.notReadAgain(error instanceof Error ? error.message : String(error));
  }
  const count = (lots: readonly string[]) => lots.filter((one) => one === lot).length;
  if (count(after.log.lots) !== count(before) + rows.length) throw new Error(LOGGING.notThere(lot));
  const { settings } = book;
  const hasNew = settings && newFactors(after.log, after.vessels, settings).some(({ offer }) => offer);
  return hasNew ? done + LOGGING.seeFactors : done;
}

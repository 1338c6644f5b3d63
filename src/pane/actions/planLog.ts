import { type CorrectedMove, correctedMoves, correctedRows, potsOf } from "../../runsheet/record/correction";
import { type LogRow, logAddition } from "../../runsheet/record/logAddition";
import { logRows } from "../../runsheet/record/logRows";
import { moveAddition, type NewMove, openingMove } from "../../runsheet/record/moveRows";
import { potsByState } from "../../runsheet/record/openPots";
import { type PouredPot, type PouredRun, withPots } from "../../runsheet/record/poured";
import { type PourMoves, pourMoves, type UsedLot } from "../../runsheet/record/pourMoves";
import { pourWarnings } from "../../runsheet/record/pourWarnings";
import { sameName } from "../../runsheet/sameName";
import type { Opening } from "../../runsheet/stock/openings";
import type { Moves } from "../../runsheet/tables/moves";
import { potsNote } from "../../runsheet/tables/potsWords";
import { RUNS_LOG } from "../../runsheet/tables/runsLog";
import type { Addition } from "../../sheet/addition";
import { LOGGING, moveLine, openingLine, rowLine } from "../words/logging";
import type { OnRecord } from "./onRecord";
import type { Part } from "./writtenRun";

/** What logging a pour will add, and what is said of it beforehand. */
export interface LogPlan {
  readonly rows: readonly LogRow[];
  readonly moves: readonly NewMove[];
  readonly additions: readonly Addition[];
  readonly parts: readonly Part[];
  /** What the press that adds it is called. */
  readonly press: string;
  /** Whether a table of moves may be begun with it. */
  readonly offersMoves: boolean;
}

/** What the pots that are poured and not logged yet add; where all are logged, a correction of what was written over. */
export function planLog(
  poured: PouredRun,
  record: OnRecord,
  { sheet, copies, beginsMoves }: { sheet: string; copies: readonly string[]; beginsMoves: boolean },
): LogPlan {
  const { open, logged, unpoured } = potsByState(poured, record.log);
  const isCorrection = open.length === 0;
  const run = withPots(poured, isCorrection ? logged : open);
  const rows = isCorrection ? corrected(poured, logged, record) : logRows(run, record.vessels);
  const { openings, used, asks, says } = usedOf(run, allIds(poured), record, isCorrection, beginsMoves);
  const moves = [...openings.map((one) => openingMove(one, poured.date)), ...movesOf(used, poured, isCorrection)];
  if (isCorrection && rows.length === 0 && moves.length === 0) throw new Error(LOGGING.loggedAlready(poured.lot));
  const questions = [
    ...copies.map((copy) => LOGGING.isThisTheOne(copy, poured.lot, sheet)),
    ...pourWarnings(run, record.vessels, record.log),
    ...asks,
    ...doubtsAbout(record, unpoured),
  ];
  return {
    rows,
    moves,
    additions: additionsOf(rows, moves, record, poured),
    parts: partsOf({ rows, openings, used, questions, says, unpoured, isCorrection, poured, record }),
    press: isCorrection ? LOGGING.correct : questions.length > 0 ? LOGGING.logAnyway : LOGGING.add,
    offersMoves: !isCorrection && !record.moves && !beginsMoves,
  };
}

const corrected = (poured: PouredRun, pots: readonly PouredPot[], { logTable, log, vessels }: OnRecord): LogRow[] =>
  logTable ? correctedRows(poured, pots, logTable, log, vessels) : [];

/** A lot and how much of it, above 0 where it comes back; with the use where it is known. */
type Change = CorrectedMove & { readonly use?: UsedLot["use"] };

const NO_MOVES: Moves = { rows: [], unit: "g", ratio: 1, said: new Map(), saidOfAll: { weight: [], count: [] } };

/** What is to be put down in the moves, what stood in On hand first; nothing where there are none. */
function usedOf(
  run: PouredRun,
  all: readonly string[],
  { moves, ...tables }: OnRecord,
  isCorrection: boolean,
  beginsMoves: boolean,
): Pick<PourMoves, "openings" | "asks" | "says"> & { used: Change[] } {
  const read = moves?.read ?? (beginsMoves ? NO_MOVES : undefined);
  if (!read) return NOTHING;
  if (!isCorrection) {
    const { openings, used, asks, says } = pourMoves(run, { ...tables, moves: read });
    const isOpened = ({ item }: UsedLot) => openings.some((one) => sameName(one.item) === sameName(item));
    const first = moves || used.every(isOpened) ? [] : [LOGGING.beginWithShelf];
    return {
      openings,
      used: used.map((one) => ({ ...one, change: -one.written, pots: potsOf(one.pots, all) })),
      asks,
      says: [...first, ...says],
    };
  }
  const isOwn = (one: { run: string }) => sameName(one.run) === sameName(run.lot);
  const before = read.rows.filter(isOwn);
  // What was logged before there were moves is no matter of theirs.
  if (before.length === 0) return NOTHING;
  const others = { ...read, rows: read.rows.filter((one) => !isOwn(one)) };
  const { openings, used, asks, says } = pourMoves(run, { ...tables, moves: others });
  const uses = new Map(used.map(({ item, use }) => [sameName(item), use]));
  const changes = correctedMoves(before, used, all).map((one): Change => {
    const use = uses.get(sameName(one.item));
    return use ? { ...one, use } : one;
  });
  const isMoved = ({ item }: Opening) => read.rows.some((move) => sameName(move.item) === sameName(item));
  return {
    openings: openings.filter((one) => !isMoved(one)),
    used: changes,
    asks: changes.length > 0 ? asks : [],
    says: changes.length > 0 ? says : [],
  };
}

const NOTHING = { openings: [], used: [], asks: [], says: [] };

const movesOf = (used: readonly Change[], { lot: run, date }: PouredRun, isCorrection: boolean): NewMove[] =>
  used.map(({ item, lot, change, pots }) => {
    // By its pots a lot is followed to the candles that hold it.
    const note = [isCorrection ? "correction" : "", potsNote(pots)].filter((words) => words !== "").join(", ");
    return { date, item, lot, change, run, note };
  });

const allIds = ({ pots }: PouredRun): string[] => pots.map(({ id }) => id);

function additionsOf(
  rows: readonly LogRow[],
  moves: readonly NewMove[],
  { logTable, moves: known }: OnRecord,
  { unit }: PouredRun,
): Addition[] {
  return [
    ...(rows.length > 0 ? [logAddition(rows, logTable)] : []),
    ...(moves.length > 0 ? [moveAddition(moves, known?.table, unit)] : []),
  ];
}

/** What of the tables is to be thought of before anything is added. */
function doubtsAbout({ logTable, moves }: OnRecord, unpoured: readonly PouredPot[]): string[] {
  const isOnlyOnce = logTable !== undefined && unpoured.length > 0 && logTable.columns.pots === undefined;
  const below = moves?.table.below?.rows ?? 0;
  return [
    ...(isOnlyOnce ? [LOGGING.noPots(logTable.name)] : []),
    ...(moves && below > 0 ? [LOGGING.movesBelow(below, moves.table.name)] : []),
    ...(moves && moves.table.columns.run === undefined ? [LOGGING.noRun(moves.table.name)] : []),
  ];
}

function partsOf({
  rows,
  openings,
  used,
  questions,
  says,
  unpoured,
  isCorrection,
  poured: { lot, unit },
  record: { logTable, moves },
}: {
  rows: readonly LogRow[];
  openings: readonly Opening[];
  used: readonly Change[];
  questions: readonly string[];
  says: readonly string[];
  unpoured: readonly PouredPot[];
  isCorrection: boolean;
  poured: PouredRun;
  record: OnRecord;
}): Part[] {
  const adds = (there: { readonly name: string } | undefined, name: string, count: number) =>
    there ? LOGGING.willAdd(there.name, count) : LOGGING.willBegin(name, count);
  const movesUnit = moves && moves.read.ratio !== 1 ? undefined : unit;
  const unitOf = ({ use }: Pick<Change, "use">) => (use === "count" ? undefined : movesUnit);
  const parts: Part[] = [
    { says: isCorrection ? LOGGING.willCorrect(lot) : "", list: [] },
    { says: LOGGING.checkFirst, list: questions },
    { says: adds(logTable, RUNS_LOG.name, rows.length), list: rows.map((row) => rowLine(row, unit)) },
    {
      says: adds(moves?.table, "Moves", openings.length + used.length),
      list: [...openings.map((one) => openingLine(one, unitOf(one))), ...used.map((one) => moveLine(one, unitOf(one)))],
    },
    { says: LOGGING.aboutMoves, list: [...(openings.length > 0 ? [LOGGING.carried(openings.length)] : []), ...says] },
    { says: LOGGING.stayOpen, list: isCorrection ? [] : unpoured.map(({ id }) => id) },
  ];
  const isSaid = (part: Part) => part.list.length > 0 || part.says === LOGGING.willCorrect(lot);
  return parts.filter(isSaid);
}

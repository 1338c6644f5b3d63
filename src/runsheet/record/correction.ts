import { tidy } from "../../core/tidy";
import type { CellValue, Content } from "../../sheet/sheet";
import { sameName } from "../sameName";
import { standingUses } from "../stock/standingUses";
import type { Move } from "../tables/moves";
import { type MovePots, potsIn } from "../tables/potsWords";
import { LOG_COLUMNS, type Log, type LoggedRow, type LogHeading, POTS } from "../tables/runsLog";
import type { Vessels } from "../tables/vessels";
import type { LogRow, LogTable } from "./logAddition";
import { logRows } from "./logRows";
import { type PouredPot, type PouredRun, withPots } from "./poured";
import type { UsedLot } from "./pourMoves";

/** What is an amount in the log: a row that takes another one back has these the other way round, and no shares. */
const AMOUNTS = ["Candles", "Good", "Wax planned", "Wax actual", "Scent planned", "Scent actual"] as const;
const KEPT = ["Lot", "Date", "Scent", "Vessel", "Weights in", POTS] as const;

/**
 * The rows that put right what the log says of a run whose sheet was written over since: each row that is wrong is
 * taken back and written anew. None where the sheet says what the log says.
 */
export function correctedRows(
  run: PouredRun,
  pots: readonly PouredPot[],
  table: LogTable,
  log: Log,
  vessels: Vessels,
): LogRow[] {
  const standing = log.rows.filter(({ lot }) => lot === run.lot);
  return batches(standing).flatMap((batch) => {
    const ids = new Set(batch.flatMap((row) => row.pots ?? pots.map(({ id }) => id)));
    const own = pots.filter(({ id }) => ids.has(id));
    const anew = logRows(withPots(run, own), vessels);
    const same = anew.flatMap((row) => {
      const old = batch.find((one) => isSame(row, one, table));
      return old ? [[row, old] as const] : [];
    });
    const wrong = batch.filter((row) => !same.some(([, old]) => old === row));
    return [...wrong.map(reversed), ...anew.filter((row) => !same.some(([now]) => now === row))];
  });
}

/** Rows that share pots were logged together, and are worked out together again. */
function batches(rows: readonly LoggedRow[]): LoggedRow[][] {
  const found: LoggedRow[][] = [];
  for (const row of rows) {
    const sharing = found.filter((batch) => batch.some((one) => sharesPots(one, row)));
    for (const batch of sharing) found.splice(found.indexOf(batch), 1);
    found.push([...sharing.flat(), row]);
  }
  return found;
}

function sharesPots(a: LoggedRow, b: LoggedRow): boolean {
  if (a.pots === undefined || b.pots === undefined) return true;
  const own = new Set(b.pots);
  return a.pots.some((id) => own.has(id));
}

function reversed({ cells }: LoggedRow): LogRow {
  const kept = KEPT.flatMap((heading) => entry(heading, cells[heading] ?? null));
  const amounts = AMOUNTS.flatMap((heading) => {
    const value = cells[heading];
    return entry(heading, typeof value === "number" ? -value : null);
  });
  return { ...Object.fromEntries([...kept, ...amounts]), Remarks: { text: "Takes back a row above: a correction." } };
}

function entry(heading: LogHeading, value: CellValue): [LogHeading, Content][] {
  if (typeof value === "number") return [[heading, { number: value }]];
  return typeof value === "string" && value !== "" ? [[heading, { text: value }]] : [];
}

/** Whether a row would hold what is in the log already, as far as the log has columns for it. */
function isSame(row: LogRow, { cells, pots }: LoggedRow, { columns }: Pick<LogTable, "columns">): boolean {
  const shown = LOG_COLUMNS.flatMap(({ field, heading }): LogHeading[] =>
    heading !== "Remarks" && heading !== POTS && columns[field] !== undefined ? [heading] : [],
  );
  const isEqual = (heading: LogHeading) => {
    const [now, old] = [row[heading], cells[heading] ?? null];
    if (now && "number" in now) return typeof old === "number" && Math.abs(now.number - old) <= 1e-9 * Math.abs(old);
    return (now && "text" in now ? now.text.trim() : "") === String(old ?? "").trim();
  };
  const now = row[POTS];
  const isOfThem = pots === undefined || (now && "text" in now && String(potsIn(now.text)) === String(pots));
  return Boolean(isOfThem) && shown.every(isEqual);
}

/** So much of a lot to put down in the moves, as the table counts it: above 0 it comes back. */
export interface CorrectedMove extends Pick<UsedLot, "item" | "lot"> {
  readonly change: number;
  readonly pots: MovePots;
}

/**
 * The moves that put right what the moves of a run say: a lot that is wrong, or that went into other pots, comes back
 * and is taken anew.
 * @param all the ids of all pots of its sheet
 */
export function correctedMoves(
  before: readonly Move[],
  now: readonly UsedLot[],
  all: readonly string[],
): CorrectedMove[] {
  const found = new Map<string, { before: Move[]; now: UsedLot[] }>();
  const of = ({ item, lot }: { item: string; lot: string }) => {
    const key = JSON.stringify([sameName(item), sameName(lot)]);
    const known = found.get(key) ?? { before: [], now: [] };
    found.set(key, known);
    return known;
  };
  for (const move of before) of(move).before.push(move);
  for (const used of now) of(used).now.push(used);
  return [...found.values()].flatMap(({ before, now }) => {
    const was = standingUses(before);
    const is = tidy(now.reduce((total, { written }) => total + written, 0));
    const pots = [...new Set(now.flatMap((used) => used.pots))];
    const isSame = Math.abs(was.reduce((total, { used }) => total + used, 0) - is) < NOTHING;
    if (isSame && (is === 0 || isOfPots(was, pots, all))) return [];
    return [
      ...was.map(({ item, lot, used, pots }) => ({ item, lot, change: used, pots })),
      ...now.map(({ item, lot, written, pots }) => ({ item, lot, change: tidy(-written), pots: potsOf(pots, all) })),
    ].filter(({ change }) => Math.abs(change) >= NOTHING);
  });
}

/** Half a millionth: amounts are whole millionths. */
const NOTHING = 5e-7;

/** Pots as a move names them. */
export const potsOf = (pots: readonly string[], all: readonly string[]): MovePots =>
  all.length > 0 && areAmong(all, pots) ? "all" : pots;

function areAmong(some: readonly string[], all: readonly string[]): boolean {
  const known = new Set(all);
  return some.every((id) => known.has(id));
}

/** Whether what was taken names these pots; where it does not say any, nothing is known to be wrong. */
function isOfPots(
  was: readonly { readonly pots: MovePots }[],
  now: readonly string[],
  all: readonly string[],
): boolean {
  const named = was.flatMap(({ pots }) => (pots === "all" ? all : (pots ?? [])));
  return was.some(({ pots }) => pots === undefined) || (areAmong(now, named) && areAmong(named, now));
}

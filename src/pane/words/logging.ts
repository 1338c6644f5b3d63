/** The words of logging a pour: what it will add, what to check first, what was added. */

import { plain } from "../../core/check/plain";
import { formatWeight } from "../../runsheet/likelyWeight";
import type { LogRow } from "../../runsheet/record/logAddition";
import type { WeightUnit } from "../../runsheet/settings";
import { type MovePots, potsNote } from "../../runsheet/tables/potsWords";
import type { LogHeading } from "../../runsheet/tables/runsLog";

export const LOGGING = {
  log: "Log this pour",
  add: "Add these rows",
  logAnyway: "Log anyway",
  correct: "Add this correction",
  beginMoves: "Begin a Moves table with it",
  wrong: (sentences: readonly string[]) => `Nothing is logged. ${sentences.join(". ")}.`,
  nothingWritten: (sheet: string) =>
    `Nothing is written on ${sheet} yet: fill in actual weights, good candles or the weight of one.`,
  loggedAlready: (lot: string) =>
    `Lot ${lot} is in the runs log already, as it stands on its sheet. To correct it, write on the sheet what is right, then log it once more.`,
  settingsUnread: "The settings of this workbook are not read yet. Wait a moment, then try again.",
  isThisTheOne: (copy: string, lot: string, sheet: string) =>
    `${copy} carries the same lot, ${lot}: is ${sheet} the one that was poured by?`,
  noPots: (table: string) =>
    `${table} has no column Pots, so this lot can be logged only once: add a column of that name to log the other pots later`,
  movesBelow: (rows: number, table: string) =>
    `${rows} ${rows === 1 ? "row" : "rows"} right below ${table}, no part of it: not counted as on hand`,
  noMovesColumns: (table: string, fields: string) =>
    `${table} has no column for ${fields}. Fix the heading, or choose the column or no table under More tables; then try again.`,
  noRun: (table: string) => `${table} has no column Run: add one, or no lot can be traced to its candles`,
  movesUnit: (table: string, why: string) => `Nothing can be added to ${table}: ${why}.`,
  changed: "This has changed since it was shown. ",
  checkFirst: "Nothing is logged yet. Check these first:",
  willCorrect: (lot: string) =>
    `Lot ${lot} is in the runs log. Its sheet says something else now. A correction takes back what is wrong and writes it anew.`,
  willAdd: (table: string, rows: number) => `${rowsOf(rows)} to add to ${table}:`,
  willBegin: (table: string, rows: number) => `${table}, a new table, with ${rowsOf(rows)}:`,
  aboutMoves: "About the lots:",
  beginWithShelf: "moves count what is on hand: write down under Receiving what the shelf held before this pour",
  carried: (rows: number) =>
    `${rows === 1 ? "the first row is" : `the first ${rows} rows are`} what stands in On hand: from now on the moves say what is on hand, and On hand does not count. Is this pour taken off there already? Then put it back there first`,
  stayOpen: "Nothing is written of these pots. They stay open, to be logged later:",
  noMoves: "No Moves table is here, so no stock is counted down.",
  mass: (lot: string) => `Lot ${lot}, what became of the wax:`,
  done: (lot: string, rows: number, moves: number) =>
    `Lot ${lot} is in the runs log now, ${rowsOf(rows)}${moves > 0 ? `, and in the moves, ${rowsOf(moves)}` : ""}.`,
  notReadAgain: (why: string) => ` It could not be read again: ${why}`,
  notThere: (lot: string) =>
    `Lot ${lot} was added to the runs log and does not stand there. Check the log, then try again.`,
  seeFactors: " See the wax factors it shows.",
} as const;

const rowsOf = (rows: number): string => `${rows} ${rows === 1 ? "row" : "rows"}`;

/** A row of the log in a line: what was poured, how many, of how much. */
export function rowLine(row: LogRow, unit: WeightUnit): string {
  const of = (heading: LogHeading): string | number | undefined => {
    const content = row[heading];
    return content && ("text" in content ? content.text : "number" in content ? content.number : undefined);
  };
  const weight = (name: string, actual: LogHeading, planned: LogHeading) => {
    const [was, plan] = [of(actual), of(planned)];
    if (typeof was === "number") return [`${name} ${formatWeight(was, unit)}`];
    return typeof plan === "number" && plan !== 0 ? [`${name} not weighed`] : [];
  };
  const [candles, good] = [of("Candles"), of("Good")];
  const parts = [
    candles === undefined ? "candles not counted" : `${candles} ${candles === 1 ? "candle" : "candles"}`,
    good === undefined ? "good ones not counted" : `${good} good`,
    ...weight("wax", "Wax actual", "Wax planned"),
    ...weight("scent", "Scent actual", "Scent planned"),
  ];
  // A row that is taken back may be of a log without these columns.
  const named = [of("Scent"), of("Vessel")].filter((one) => one !== undefined).join(", ");
  return `${named === "" ? "no scent and no vessel named" : named}: ${parts.join(", ")}`;
}

/** What On hand says and the moves do not yet, in a line: `Soy wax: +12500 g, what On hand says`. */
export const openingLine = (
  { item, change }: { readonly item: string; readonly change: number },
  unit: WeightUnit | undefined,
): string => `${item}: +${amountOf(change, unit)}, what On hand says`;

const amountOf = (change: number, unit: WeightUnit | undefined): string =>
  unit ? formatWeight(Math.abs(change), unit) : plain(Math.abs(change));

/** A move in a line: `Soy wax, lot L-12: -972 g`, with its pots where they are not all. */
export function moveLine(
  {
    item,
    lot,
    change,
    pots,
  }: { readonly item: string; readonly lot: string; readonly change: number; readonly pots: MovePots },
  unit: WeightUnit | undefined,
): string {
  return `${item}${lot === "" ? ", no lot" : `, lot ${lot}`}: ${change < 0 ? "-" : "+"}${amountOf(change, unit)}${pots === "all" || pots === undefined ? "" : `, ${potsNote(pots)}`}`;
}

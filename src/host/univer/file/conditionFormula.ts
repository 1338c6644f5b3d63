/**
 * Rules for texts, blanks, errors and days have a formula in files, by which spreadsheet programs go. The plugin does
 * not know it. As Excel writes them (from memory).
 */

import type { Condition } from "../../../file/book";
import { columnLetters } from "../../../sheet/columnLetters";

type Say = (cell: string, text: string) => string;

const THIS = "TODAY()";
const week = "WEEKDAY(TODAY())";
const inMonth = (cell: string, of: string) => `AND(MONTH(${cell})=MONTH(${of}),YEAR(${cell})=YEAR(${of}))`;
const isDay =
  (of: string): Say =>
  (cell) =>
    `FLOOR(${cell},1)=${of}`;

const FORMULAS: Readonly<Record<string, Say>> = {
  containsText: (cell, text) => `NOT(ISERROR(SEARCH(${text},${cell})))`,
  notContainsText: (cell, text) => `ISERROR(SEARCH(${text},${cell}))`,
  beginsWith: (cell, text) => `LEFT(${cell},LEN(${text}))=${text}`,
  endsWith: (cell, text) => `RIGHT(${cell},LEN(${text}))=${text}`,
  containsBlanks: (cell) => `LEN(TRIM(${cell}))=0`,
  notContainsBlanks: (cell) => `LEN(TRIM(${cell}))>0`,
  containsErrors: (cell) => `ISERROR(${cell})`,
  notContainsErrors: (cell) => `NOT(ISERROR(${cell}))`,
};

const PERIODS: Readonly<Record<string, Say>> = {
  today: isDay(THIS),
  yesterday: isDay(`${THIS}-1`),
  tomorrow: isDay(`${THIS}+1`),
  last7Days: (cell) => `AND(${THIS}-FLOOR(${cell},1)<=6,FLOOR(${cell},1)<=${THIS})`,
  thisMonth: (cell) => inMonth(cell, THIS),
  lastMonth: (cell) => inMonth(cell, `EDATE(${THIS},-1)`),
  nextMonth: (cell) => inMonth(cell, `EDATE(${THIS},1)`),
  thisWeek: (cell) => `AND(${THIS}-FLOOR(${cell},1)<=${week}-1,FLOOR(${cell},1)-${THIS}<=7-${week})`,
  lastWeek: (cell) => `AND(${THIS}-FLOOR(${cell},1)>=${week},${THIS}-FLOOR(${cell},1)<${week}+7)`,
  nextWeek: (cell) => `AND(FLOOR(${cell},1)-${THIS}>7-${week},FLOOR(${cell},1)-${THIS}<15-${week})`,
};

/** A rule with the formula that it has in a file, for the first of its cells. */
export function withFormula(condition: Condition): Condition {
  const { kind, period = "", text = "", areas } = condition;
  const say = kind === "timePeriod" ? PERIODS[period] : FORMULAS[kind];
  const [first] = areas;
  if (!say || !first) return condition;
  const cell = `${columnLetters(first.column)}${first.row + 1}`;
  return { ...condition, formulas: [`=${say(cell, `"${text.replaceAll('"', '""')}"`)}`] };
}

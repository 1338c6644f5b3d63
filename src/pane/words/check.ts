/** The words of what is to be fixed and checked, and of the presses beside it. */

import { isError, type Problem } from "../../runsheet/problem";

export const CHECK = {
  heading: "Check",
  /** What is to be done about the rows, and which. */
  where: (problem: Problem, rows: string, isOne: boolean, table: string | undefined) =>
    `${isError(problem) ? "Fix" : "Check"} ${isOne ? "row" : "rows"} ${rows}${table === undefined ? "" : ` of ${table}`}`,
  more: (count: number) => `and ${count} more`,
  takeIn: (rows: number, table: string) => `Take ${theRows(rows)} into ${nameOr(table, "the selection")}`,
  leaveRows: (rows: number, table: string) => `Leave ${theRows(rows)} out of ${nameOr(table, "the selection")}`,
  leaveColumn: (heading: string) => `Leave ${heading} out`,
  takenIn: (rows: number, table: string) =>
    `${nameOr(table, "The selection")} has ${rows} more ${rows === 1 ? "row" : "rows"} now.`,
  notPoured: (rows: number) => `${rows === 1 ? "1 row has" : `${rows} rows have`} no quantity and will not be poured.`,
  summary: (stops: number, checks: number) => {
    if (stops > 0) return `${things(stops)} to fix before a sheet can be written.`;
    return checks > 0 ? `Ready, with ${things(checks)} to check.` : "Nothing to fix.";
  },
} as const;

/** So many things, as they are counted in front of a person. */
export const things = (count: number): string => `${count} ${count === 1 ? "thing" : "things"}`;

const theRows = (rows: number) => (rows === 1 ? "the row" : `the ${rows} rows`);
const nameOr = (table: string, otherwise: string) => table || otherwise;

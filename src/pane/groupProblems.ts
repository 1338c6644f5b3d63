import { list } from "../core/check/list";
import type { Problem } from "../runsheet/problem";

/** What is said once of all the rows that it is true of. */
export interface ProblemGroup {
  readonly problem: Problem;
  /** From 0 below the heading, in order; empty where it is about no row. */
  readonly rows: readonly number[];
}

/** Problems that say the same of several rows, together, in the order in which each first came. */
export function groupProblems(problems: readonly Problem[]): ProblemGroup[] {
  const groups = new Map<string, { problem: Problem; rows: number[] }>();
  for (const problem of problems) {
    const { row, ...same } = problem;
    const key = JSON.stringify(Object.entries(same).sort());
    const group = groups.get(key) ?? { problem, rows: [] };
    groups.set(key, group);
    if (row !== undefined) group.rows.push(row);
  }
  return [...groups.values()].map(({ problem, rows }) => ({
    problem,
    rows: [...new Set(rows)].sort((a, b) => a - b),
  }));
}

/** Numbers as a person lists them: `7, 9 to 12 and 20`. */
export function listOfRows(rows: readonly number[]): string {
  const runs: [number, number][] = [];
  for (const row of rows) {
    const last = runs.at(-1);
    if (last && last[1] === row - 1) last[1] = row;
    else runs.push([row, row]);
  }
  const parts = runs.flatMap(([first, last]) =>
    last - first === 1 ? [String(first), String(last)] : [first === last ? String(first) : `${first} to ${last}`],
  );
  return list(parts, "and");
}

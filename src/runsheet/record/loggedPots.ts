import type { Log } from "../tables/runsLog";

/** The pots of a lot that are in the log; undefined where it is there and does not say which: then all are. */
export function loggedPots({ rows }: Log, lot: string): readonly string[] | undefined {
  const pots = rows.filter((row) => row.lot === lot).map((row) => row.pots);
  return pots.some((ids) => ids === undefined) ? undefined : pots.flatMap((ids) => ids ?? []);
}

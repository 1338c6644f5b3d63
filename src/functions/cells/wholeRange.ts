import type { Argument, Arguments } from "./argument";
import { isBlank } from "./blank";
import { clean, type Result } from "./clean";
import { mayBeBlank } from "./doubt";
import { toError } from "./errors";
import { ran } from "./ran";
import { type Line, zipRanges } from "./zipRanges";

/**
 * Works on the lines of ranges together and puts each result where the line's first cell stood. A line with a blank
 * in a `skip` argument stays blank, and a bad one keeps its own error: one that cannot be read, or that `check`
 * refuses. `work` sees what `check` made of the good ones (and the rows of the bad ones), and a fault it throws
 * stands in each good one. With `always` it is called without any line too; its fault then stands in every cell.
 */
export function wholeRange<V extends unknown[], T>(
  args: Arguments<V>,
  check: (...values: V) => T,
  work: (good: readonly T[], badRows: readonly number[]) => readonly (number | string)[],
  { skip = [0], always = false }: { readonly skip?: readonly number[]; readonly always?: boolean } = {},
): Result[][] {
  ran();
  const { grid } = (args as unknown as readonly Argument<unknown>[])[0] as Argument<unknown>;
  let found: Line<V>[];
  try {
    found = zipRanges(args, skip);
  } catch (thrown) {
    const error = toError(thrown);
    return grid.map((cells) => cells.map((cell) => (isBlank(cell) || mayBeBlank(cell) ? "" : error)));
  }
  const { good, goodRows, bad } = sorted(found, check);
  const results = new Map<number, Result>(bad);
  let elsewhere: Result = "";
  if (good.length > 0 || (always && found.length === 0)) {
    try {
      const done = work(good, [...bad.keys()]);
      for (const [i, row] of goodRows.entries()) results.set(row, clean(done[i] as number | string));
    } catch (thrown) {
      const error = toError(thrown);
      for (const row of goodRows) results.set(row, error);
      if (goodRows.length === 0) elsewhere = error;
    }
  }
  let row = 0;
  return grid.map((cells) => cells.map(() => results.get(++row) ?? elsewhere));
}

/** What `check` makes of the good lines, with their rows, and the errors of the bad ones by row. */
function sorted<V extends unknown[], T>(found: readonly Line<V>[], check: (...values: V) => T) {
  const good: T[] = [];
  const goodRows: number[] = [];
  const bad = new Map<number, Result>();
  for (const { row, values, fault } of found) {
    try {
      if (fault) throw fault;
      good.push(check(...values));
      goodRows.push(row);
    } catch (thrown) {
      bad.set(row, toError(thrown));
    }
  }
  return { good, goodRows, bad };
}

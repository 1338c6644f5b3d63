import type { Argument, Arguments } from "./argument";
import { clean, type Result } from "./clean";
import { seemsBlank } from "./doubt";
import { toError } from "./errors";
import { ran } from "./ran";
import { eachLine } from "./zipRanges";

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
  const results: (Result | undefined)[] = [];
  const good: T[] = [];
  const goodRows: number[] = [];
  const badRows: number[] = [];
  try {
    eachLine(args, { skip }, (row, values, fault) => {
      try {
        if (fault) throw fault;
        good.push(check(...values));
        goodRows.push(row);
      } catch (thrown) {
        results[row] = toError(thrown);
        badRows.push(row);
      }
    });
  } catch (thrown) {
    const error = toError(thrown);
    return grid.map((cells) => cells.map((cell) => (seemsBlank(cell) ? "" : error)));
  }
  let elsewhere: Result = "";
  if (good.length > 0 || (always && badRows.length === 0)) {
    try {
      const done = work(good, badRows);
      for (let i = 0; i < goodRows.length; i++) results[goodRows[i] as number] = clean(done[i] as number | string);
    } catch (thrown) {
      const error = toError(thrown);
      for (const row of goodRows) results[row] = error;
      if (goodRows.length === 0) elsewhere = error;
    }
  }
  let row = 0;
  // A row of its own for each cell: such rows take half the room.
  return grid.map((cells) =>
    cells.length === 1 ? [results[++row] ?? elsewhere] : cells.map(() => results[++row] ?? elsewhere),
  );
}

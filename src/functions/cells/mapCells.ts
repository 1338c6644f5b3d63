import { Fault } from "../../core/fault";
import { type Argument, type Arguments, columnsOf, isPlain, readCell } from "./argument";
import { isBlank } from "./blank";
import { clean, type Result } from "./clean";
import { mayBeBlank } from "./doubt";
import { toError } from "./errors";
import { ran } from "./ran";

type Outcome = number | string | readonly (number | string)[];

/**
 * Works cell by cell and broadcasts: one row or one column is repeated to the size of the largest argument, and
 * a cell beyond a shorter one is #N/A. Where the first argument (or `key`, -1 for none) is blank the result is blank.
 * `work` may give several values: they stand side by side.
 */
export function mapCells<V extends unknown[]>(
  args: Arguments<V>,
  work: (...values: V) => Outcome,
  { width = 1, key = 0 } = {},
): Result[][] {
  ran();
  const list = (args as unknown as readonly Argument<unknown>[]).map(spread);
  const first = list[key];
  // The values of the cell in hand: what is the same for all stands there already.
  const values = list.map(({ constant }) => constant);
  const varying = list.filter(({ isConstant }) => !isConstant);
  const tall = Math.max(...list.map(({ rows }) => rows));
  const wide = Math.max(...list.map(({ columns }) => columns));
  const areUneven = varying.some((one) => isBeyond(one, tall - 1, wide - 1));
  const call = caller(work as (...values: unknown[]) => Outcome, values);

  const resultAt = (r: number, c: number): Outcome | CustomFunctions.Error => {
    if (first && isBlankAt(first, r, c)) return "";
    try {
      if (areUneven) for (let k = 0; k < varying.length; k++) requireCell(varying[k] as Spread, r, c);
      for (let k = 0; k < varying.length; k++) {
        const { arg, place } = varying[k] as Spread;
        values[place] = readCell(arg, cellAt(varying[k] as Spread, r, c));
      }
      return call();
    } catch (thrown) {
      return toError(thrown);
    }
  };

  // Plain loops: this is what a column of thousands of cells waits for.
  const rows = new Array<Result[]>(tall);
  for (let r = 0; r < tall; r++) {
    if (wide * width === 1) {
      const result = resultAt(r, 0);
      // A row of its own for numbers: such rows take half the room.
      rows[r] = isPlain(result) && Number.isFinite(result) ? [result] : [clean(result as Result)];
      continue;
    }
    const row = new Array<Result>(wide * width);
    for (let c = 0; c < wide; c++) {
      const result = resultAt(r, c);
      for (let i = 0; i < width; i++) row[c * width + i] = clean(Array.isArray(result) ? result[i] : result);
    }
    rows[r] = row;
  }
  return rows;
}

/** Calls with the values as they stand then. Most functions take few: to spread a list takes longer than they do. */
function caller(work: (...values: unknown[]) => Outcome, values: readonly unknown[]): () => Outcome {
  switch (values.length) {
    case 1:
      return () => work(values[0]);
    case 2:
      return () => work(values[0], values[1]);
    case 3:
      return () => work(values[0], values[1], values[2]);
    case 4:
      return () => work(values[0], values[1], values[2], values[3]);
    case 5:
      return () => work(values[0], values[1], values[2], values[3], values[4]);
    default:
      return () => work(...values);
  }
}

/** An argument with its place and its measures, and its value where one cell gives the same for all. */
interface Spread {
  readonly arg: Argument<unknown>;
  readonly place: number;
  readonly rows: number;
  readonly columns: number;
  readonly isConstant: boolean;
  readonly constant: unknown;
}

function spread(arg: Argument<unknown>, place: number): Spread {
  const [rows, columns] = [arg.grid.length, columnsOf(arg)];
  let [isConstant, constant]: [boolean, unknown] = [rows === 1 && columns === 1, undefined];
  try {
    if (isConstant) constant = readCell(arg, arg.grid[0]?.[0]);
  } catch {
    // Read again for each cell: only those that are not blank show the error.
    isConstant = false;
  }
  return { arg, place, rows, columns, isConstant, constant };
}

const isBeyond = ({ rows, columns }: Spread, r: number, c: number): boolean =>
  (r >= rows && rows !== 1) || (c >= columns && columns !== 1);

function cellAt({ arg, rows }: Spread, r: number, c: number): unknown {
  const row = arg.grid[rows === 1 ? 0 : r];
  return row?.length === 1 ? row[0] : row?.[c];
}

function isBlankAt(first: Spread, r: number, c: number): boolean {
  if (isBeyond(first, r, c)) return false;
  const cell = cellAt(first, r, c);
  return !isPlain(cell) && (isBlank(cell) || mayBeBlank(cell));
}

function requireCell(spread: Spread, r: number, c: number): void {
  if (isBeyond(spread, r, c))
    throw new Fault("none", spread.arg.name, "the range ends here; give it the size of the others");
}

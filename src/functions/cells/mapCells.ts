import { Fault } from "../../core/fault";
import { type Argument, type Arguments, columnsOf, isPlain, plainly, readCell } from "./argument";
import { clean, type Result } from "./clean";
import { seemsBlank } from "./doubt";
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
  const list = (args as unknown as readonly Argument<unknown>[]).map((arg, place) => spread(arg, place, place === key));
  const tall = Math.max(...list.map(({ rows }) => rows));
  const wide = Math.max(...list.map(({ columns }) => columns));
  const job: Job = {
    work: work as unknown as Job["work"],
    values: list.map(({ constant }) => constant),
    varying: list.filter(({ isConstant }) => !isConstant),
    key: list[key],
  };
  // Plain loops: this is what a column of thousands of cells waits for.
  const rows = new Array<Result[]>(tall);
  for (let r = 0; r < tall; r++) {
    if (wide * width === 1) {
      const result = resultAt(job, r, 0);
      // A row of its own for numbers: such rows take half the room.
      rows[r] = isPlain(result) && Number.isFinite(result) ? [result] : [clean(result as Result)];
      continue;
    }
    const row = new Array<Result>(wide * width);
    for (let c = 0; c < wide; c++) {
      const result = resultAt(job, r, c);
      for (let i = 0; i < width; i++) row[c * width + i] = clean(Array.isArray(result) ? result[i] : result);
    }
    rows[r] = row;
  }
  return rows;
}

interface Job {
  readonly work: (...values: unknown[]) => Outcome;
  /** The values of the cell in hand: what is the same for all stands there already. */
  readonly values: unknown[];
  readonly varying: readonly Spread[];
  readonly key: Spread | undefined;
}

function resultAt(job: Job, r: number, c: number): Outcome | CustomFunctions.Error {
  try {
    if (!readPlainly(job, r, c) && !readWithCare(job, r, c)) return "";
    const { work, values } = job;
    // As many as any function takes: to hand over a list of any length takes longer than most of them do.
    return work(values[0], values[1], values[2], values[3], values[4], values[5]);
  } catch (thrown) {
    return toError(thrown);
  }
}

/** Reads the values where all cells are plainly what is wanted, as nearly all are; false where more is to be asked. */
function readPlainly({ values, varying }: Job, r: number, c: number): boolean {
  for (let k = 0; k < varying.length; k++) {
    const one = varying[k] as Spread;
    const value = plainly(one, cellAt(one, r, c));
    if (value === undefined) return false;
    values[one.place] = value;
  }
  return true;
}

/** Reads the values; false where the key is blank, throws where a cell holds an error or is none. */
function readWithCare({ values, varying, key }: Job, r: number, c: number): boolean {
  if (key && !isBeyond(key, r, c) && seemsBlank(cellAt(key, r, c))) return false;
  for (const one of varying) requireCell(one, r, c);
  for (const one of varying) values[one.place] = readCell(one.arg, cellAt(one, r, c));
  return true;
}

/**
 * An argument with its place and its measures, and its value where one cell gives the same for all. What is asked for
 * each cell stands here by itself: to go by way of the argument takes a tenth of the time.
 */
interface Spread extends Pick<Argument<unknown>, "grid" | "read"> {
  readonly arg: Argument<unknown>;
  readonly place: number;
  readonly rows: number;
  readonly columns: number;
  readonly isConstant: boolean;
  readonly constant: unknown;
}

function spread(arg: Argument<unknown>, place: number, isKey: boolean): Spread {
  const [rows, columns] = [arg.grid.length, columnsOf(arg)];
  const cell = arg.grid[0]?.[0];
  // A blank key is no value: nothing is worked out then.
  let [isConstant, constant]: [boolean, unknown] = [rows * columns === 1 && !(isKey && seemsBlank(cell)), undefined];
  try {
    if (isConstant) constant = readCell(arg, cell);
  } catch {
    // Read again for each cell: only those that are not blank show the error.
    isConstant = false;
  }
  return { arg, grid: arg.grid, read: arg.read, place, rows, columns, isConstant, constant };
}

const isBeyond = ({ rows, columns }: Spread, r: number, c: number): boolean =>
  (r >= rows && rows !== 1) || (c >= columns && columns !== 1);

function cellAt({ grid, rows }: Spread, r: number, c: number): unknown {
  const row = grid[rows === 1 ? 0 : r];
  if (row === undefined) return undefined;
  return row.length === 1 ? row[0] : row[c];
}

function requireCell(spread: Spread, r: number, c: number): void {
  if (isBeyond(spread, r, c))
    throw new Fault("none", spread.arg.name, "the range ends here; give it the size of the others");
}

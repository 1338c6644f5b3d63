/**
 * The one place where cells become values and values become cells: reading, blanks, errors, broadcasting,
 * and the cleaning of results. The function files only name their arguments and the core function they expose.
 */

import { plain } from "../core/check/plain";
import { wrong } from "../core/check/wrong";
import { Fault } from "../core/fault";

/** What a spreadsheet hands over for an argument: a range, one value, or nothing. */
export type Cells = any;
/** What a function hands back: rows of numbers, texts and `CustomFunctions.Error`. */
export type Rows = any[][];

type Result = number | string | CustomFunctions.Error;
/** A cell as read: a value, nothing (blank), or the error that came in or that the value is. */
type Read<T> = { readonly value: T | undefined } | { readonly error: CustomFunctions.Error };

/** An argument of a function: its cells, how one is read, and whether a blank takes the core's default. */
interface Argument<T> {
  readonly name: string;
  readonly grid: readonly (readonly unknown[])[];
  readonly optional: boolean;
  readonly read: (name: string, cell: unknown) => T;
}

type Arguments<V extends unknown[]> = { readonly [K in keyof V]: Argument<V[K]> };

// --- arguments -------------------------------------------------------------------------------------------------

/** An argument of numbers that must be there. */
export const number = (name: string, cells: Cells): Argument<number> => argument(name, cells, readNumber, false);
/** An argument of texts that must be there. */
export const text = (name: string, cells: Cells): Argument<string> => argument(name, cells, readText, false);
/** An argument of numbers where a blank is left to the core. */
export const numberOr = (name: string, cells: Cells): Argument<number | undefined> =>
  argument<number | undefined>(name, cells, readNumber, true);
/** An argument of texts where a blank is left to the core. */
export const textOr = (name: string, cells: Cells): Argument<string | undefined> =>
  argument<string | undefined>(name, cells, readText, true);

function argument<T>(name: string, cells: Cells, read: Argument<T>["read"], optional: boolean): Argument<T> {
  const grid = Array.isArray(cells) ? cells.map((row) => (Array.isArray(row) ? row : [row])) : [[cells]];
  return { name, grid: grid.length > 0 && grid[0]?.length ? grid : [[null]], optional, read };
}

// --- reading one cell ------------------------------------------------------------------------------------------

const ERRORS = ["#NULL!", "#DIV/0!", "#VALUE!", "#REF!", "#NAME?", "#NUM!", "#N/A"];
/** A spreadsheet keeps 15 digits: beyond them a number is a slip, and its products would run out of range. */
const LARGEST = 1e15;

/** A rich value stands for its basic one: `{ type: "Double", basicValue: 12 }` is 12. */
function basic(cell: unknown): unknown {
  return typeof cell === "object" && cell !== null && "basicValue" in cell ? cell.basicValue : cell;
}

/** The error a cell holds, whichever way the host passes it: as an error object, a rich value or its text. */
function errorIn(cell: unknown): CustomFunctions.Error | undefined {
  if (cell instanceof CustomFunctions.Error) return cell;
  const code = typeof cell === "object" && cell !== null && "code" in cell ? cell.code : basic(cell);
  if (typeof code === "string" && ERRORS.includes(code)) {
    return new CustomFunctions.Error(code as CustomFunctions.ErrorCode);
  }
  const isRich = typeof cell === "object" && cell !== null && "type" in cell && cell.type === "Error";
  // Kinds such as #SPILL! cannot be handed on as they are.
  return isRich ? toError(new Fault("value", `the cell shows ${String(code)}; mend it first`)) : undefined;
}

function readNumber(name: string, cell: unknown): number {
  if (typeof cell === "number" && Math.abs(cell) <= LARGEST) return cell;
  if (typeof cell === "number" && Number.isFinite(cell))
    throw wrong(name, `${plain(cell)} is too large; check its digits`);
  if (typeof cell === "string") {
    if (cell.trim() === "") throw wrong(name, "the cell holds only spaces; clear it or write a number");
    throw wrong(name, `"${cell.slice(0, 40)}" is text; write a plain number`);
  }
  const shown = typeof cell === "boolean" ? String(cell).toUpperCase() : "this kind of cell";
  throw wrong(name, `${shown} is not a number; write a plain number`);
}

function readText(name: string, cell: unknown): string {
  if (typeof cell === "object" || (typeof cell === "number" && !Number.isFinite(cell))) {
    throw wrong(name, "this kind of cell cannot be read; write plain text");
  }
  return typeof cell === "number" ? plain(cell) : String(cell);
}

function readCell<T>({ name, optional, read }: Argument<T>, cell: unknown): Read<T> {
  const error = errorIn(cell);
  if (error) return { error };
  const value = basic(cell);
  if (isBlank(cell)) {
    return optional ? { value: undefined } : { error: toError(wrong(name, "the cell is blank; fill it in")) };
  }
  try {
    return { value: read(name, value) };
  } catch (fault) {
    return { error: toError(fault) };
  }
}

function isBlank(cell: unknown): boolean {
  const value = basic(cell);
  return value === null || value === undefined || value === "";
}

// --- results ---------------------------------------------------------------------------------------------------

export function toError(fault: unknown): CustomFunctions.Error {
  if (fault instanceof CustomFunctions.Error) return fault;
  const code =
    fault instanceof Fault && fault.kind === "none"
      ? CustomFunctions.ErrorCode.notAvailable
      : CustomFunctions.ErrorCode.invalidValue;
  return new CustomFunctions.Error(code, fault instanceof Error ? fault.message : String(fault));
}

/** A result as a cell may hold it: never NaN, Infinity or -0. */
function clean(result: number | string): Result {
  if (typeof result === "string") return result;
  if (Number.isFinite(result)) return result + 0;
  return toError(new Fault("value", "the answer is too large to write; check the inputs"));
}

function attempt(work: () => readonly (number | string)[]): Result[] | CustomFunctions.Error {
  try {
    return work().map(clean);
  } catch (fault) {
    return toError(fault);
  }
}

// --- the ways a function works on its cells ----------------------------------------------------------------------

/**
 * Works cell by cell and broadcasts: one row or one column is repeated to the size of the largest argument, and
 * a cell beyond a shorter one is #N/A. Where the first argument (or `key`) is blank the result is blank.
 * `work` may give several values: they stand side by side.
 */
export function eachCell<V extends unknown[]>(
  args: Arguments<V>,
  work: (...values: V) => number | string | readonly (number | string)[],
  { width = 1, key = 0 } = {},
): Rows {
  const list = args as unknown as readonly Argument<unknown>[];
  const tall = Math.max(...list.map(({ grid }) => grid.length));
  const wide = Math.max(...list.map(({ grid }) => grid[0]?.length ?? 1));
  const cellOf = ({ grid }: Argument<unknown>, r: number, c: number): unknown => {
    const row = grid[grid.length === 1 ? 0 : r];
    return row?.length === 1 ? row[0] : row?.[c];
  };
  const isBeyond = ({ grid }: Argument<unknown>, r: number, c: number): boolean =>
    (grid.length !== 1 && r >= grid.length) || (grid[0]?.length !== 1 && c >= (grid[0]?.length ?? 1));

  const oneCell = (r: number, c: number): Result[] => {
    const same = (result: Result): Result[] => Array<Result>(width).fill(result);
    const first = list[key] as Argument<unknown>;
    if (!isBeyond(first, r, c) && isBlank(cellOf(first, r, c))) return same("");
    const short = list.find((arg) => isBeyond(arg, r, c));
    if (short) {
      return same(toError(new Fault("none", `${short.name}: the range ends here; give it the size of the others`)));
    }
    const values: unknown[] = [];
    for (const arg of list) {
      const read = readCell(arg, cellOf(arg, r, c));
      if ("error" in read) return same(read.error);
      values.push(read.value);
    }
    const results = attempt(() => {
      const result = work(...(values as V));
      return Array.isArray(result) ? result : [result as number | string];
    });
    return Array.isArray(results) ? results : same(results);
  };
  return Array.from({ length: tall }, (_, r) => Array.from({ length: wide }, (_, c) => oneCell(r, c)).flat());
}

/** The one value of an argument; throws the error it holds. */
export function one<T>(arg: Argument<T>): T {
  if (arg.grid.length > 1 || (arg.grid[0]?.length ?? 1) > 1) throw wrong(arg.name, "give one cell, not a range");
  const read = readCell(arg, arg.grid[0]?.[0]);
  if ("error" in read) throw read.error;
  return read.value as T;
}

/** A line of ranges read side by side: its place in reading order from 1, its values, and the error it holds. */
export interface Line<V extends unknown[]> {
  readonly row: number;
  readonly values: V;
  readonly error: CustomFunctions.Error | undefined;
}

/**
 * Ranges of as many cells read side by side, cell after cell in reading order. Lines where one of the `skip` arguments (by
 * position) is blank are left out, with `orZero` also those where it is 0. An error stands in its own line: the
 * caller decides what it spoils.
 */
export function lines<V extends unknown[]>(
  args: Arguments<V>,
  skip: readonly number[],
  { orZero = false } = {},
): Line<V>[] {
  const list = args as unknown as readonly Argument<unknown>[];
  const columns = list.map(({ grid }) => grid.flat());
  const [length = 0] = columns.map((column) => column.length);
  for (const [i, column] of columns.entries()) {
    if (column.length === length) continue;
    throw wrong(list[i]?.name ?? "", `${column.length} cells beside ${length}; give ranges of the same size`);
  }
  const found: Line<V>[] = [];
  for (let row = 0; row < length; row++) {
    const cells = columns.map((column) => column[row]);
    if (skip.some((i) => isBlank(cells[i]) || (orZero && basic(cells[i]) === 0))) continue;
    const reads = list.map((arg, i) => readCell(arg, cells[i]));
    const bad = reads.find((read) => "error" in read);
    found.push({
      row: row + 1,
      values: reads.map((read) => ("value" in read ? read.value : undefined)) as V,
      error: bad && "error" in bad ? bad.error : undefined,
    });
  }
  return found;
}

/** The values of lines that must all be good; throws the first error among them. */
export function valuesOf<V extends unknown[]>(found: readonly Line<V>[]): V[] {
  return found.map(({ values, error }) => {
    if (error) throw error;
    return values;
  });
}

/**
 * Works on the lines of ranges together and puts each result where the line's first cell stood. Lines whose
 * first cell is blank stay blank and a bad line keeps its own error; `work` sees the good ones (and the rows of
 * the bad ones), and a fault it throws stands in each good one.
 */
export function inPlace<V extends unknown[]>(
  args: Arguments<V>,
  work: (values: readonly V[], badRows: readonly number[]) => readonly (number | string)[],
): Rows {
  const first = (args as unknown as readonly Argument<unknown>[])[0] as Argument<unknown>;
  let next = 0;
  const byRow = new Map<number, Result>();
  const results = attempt(() => {
    const found = lines(args, [0]);
    const good = found.filter(({ error }) => !error);
    const bad = found.filter(({ error }) => error);
    for (const { row, error } of bad) byRow.set(row, error as Result);
    if (good.length === 0) return [];
    const done = attempt(() =>
      work(
        good.map(({ values }) => values),
        bad.map(({ row }) => row),
      ),
    );
    for (const [i, { row }] of good.entries()) byRow.set(row, Array.isArray(done) ? (done[i] as Result) : done);
    return [];
  });
  return first.grid.map((row) =>
    row.map((cell) => {
      next++;
      if (!Array.isArray(results)) return isBlank(cell) ? "" : results;
      return byRow.get(next) ?? "";
    }),
  );
}

/** One answer, or a block of rows, from a function that works on whole ranges. */
export function answer(work: () => number | string | Rows): Rows {
  try {
    const result = work();
    const rows: Rows = Array.isArray(result) ? result : [[result]];
    return rows.map((row) => row.map((cell) => (cell instanceof CustomFunctions.Error ? cell : clean(cell))));
  } catch (fault) {
    return [[toError(fault)]];
  }
}
